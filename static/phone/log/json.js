// JSON from a file that anybody may have written: read without harm, or refused.
// Pure; transfer.js is the way in.

/** Why an export is not made or not read; the message is a sentence to show. */
export class TransferError extends Error {
  name = "TransferError";
}

const NO_FINDS =
  "This is no file of finds, or a part of it is missing. “File of all finds” makes one.";
/** A find lies nine deep in an export. */
const MOST_DEEP = 20;
/** Ten megabytes of finds hold fewer; more of them cost seconds and memory. */
export const MOST_VALUES = 500_000;
/** The finds are the longest list; an engine takes seconds over a table much longer. */
const MOST_WIDE = 10_000;
/** Keys by which code in JavaScript reaches what all objects share. */
const HARMFUL = new Set(["__proto__", "constructor", "prototype"]);

const [QUOTE, ESCAPE, COMMA] = ['"', "\\", ","].map((sign) => sign.charCodeAt(0));
const OPENING = ["[", "{"].map((sign) => sign.charCodeAt(0));
const CLOSING = ["]", "}"].map((sign) => sign.charCodeAt(0));

/**
 * The value of a JSON text, without the keys that do harm.
 * @param {string} text @returns {unknown}
 */
export function parsed(text) {
  const { deep, wide, values } = extent(text);
  if (deep > MOST_DEEP) throw new TransferError("This file is nested too deeply to be read.");
  if (values > MOST_VALUES || wide > MOST_WIDE) {
    throw new TransferError("This file holds more than a file of finds can hold.");
  }
  try {
    return JSON.parse(text, (key, value) => (HARMFUL.has(key) ? undefined : value));
  } catch (cause) {
    throw new TransferError(NO_FINDS, { cause });
  }
}

/**
 * How deep a JSON text is nested, how long its longest list or table is, and about how
 * many values it holds: found without reading it as JSON, which would fill the memory or
 * the stack first.
 * @param {string} text
 */
export function extent(text) {
  let [deep, now, wide, values] = [0, 0, 1, 1];
  const lengths = [1];
  for (let i = 0; i < text.length; i += 1) {
    const sign = text.charCodeAt(i);
    if (sign === QUOTE) i = closing(text, i);
    else if (sign === COMMA) {
      values += 1;
      lengths[now] += 1;
      wide = Math.max(wide, lengths[now]);
    } else if (OPENING.includes(sign)) {
      values += 1;
      now += 1;
      lengths[now] = 1;
      deep = Math.max(deep, now);
    } else if (CLOSING.includes(sign)) now = Math.max(0, now - 1);
  }
  return { deep, wide, values };
}

/** Where a text in quotes ends. @param {string} text @param {number} opening */
function closing(text, opening) {
  let i = opening + 1;
  while (i < text.length && text.charCodeAt(i) !== QUOTE) {
    i += text.charCodeAt(i) === ESCAPE ? 2 : 1;
  }
  return i;
}
