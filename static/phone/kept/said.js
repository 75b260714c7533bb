/** What is to be said on the screen that comes next. */

let waiting = "";

/** @param {string} sentence */
export function sayNext(sentence) {
  waiting = sentence;
}

/** The sentence for the screen that has come, once. */
export function saidNow() {
  const sentence = waiting;
  waiting = "";
  return sentence;
}
