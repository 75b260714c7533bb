/** Listening on the question: a tap answers at once, keys choose first. */

/**
 * @typedef {object} Taken
 * @property {"reading" | "cannot" | "gone" | "typed"} means
 * @property {string | import("../engine/find.js").Measured} value what was typed, an option's
 *   id, or a size that was taken off a photo
 * @property {boolean} [rest] whether it is the same on all others
 */

/**
 * Calls `take` with an answer, `type` with a measure as it is typed, `press` with the
 * character of a keypad.
 * @param {HTMLElement} root
 * @param {{take: (taken: Taken) => void, type: (text: string) => void, press: (key: string) => void}} on
 */
export function listenAnswers(root, { take, type, press }) {
  // Arrow keys choose a radio by clicking it; that is not an answer yet.
  let arrowing = false;
  root.addEventListener("keydown", (event) => {
    arrowing = event.key.startsWith("Arrow") && isRadio(event.target);
    if (arrowing) formOf(event.target)?.setAttribute("data-chosen", "");
    else typeKey(event, root, press);
  });
  root.addEventListener("keyup", () => {
    arrowing = false;
  });
  root.addEventListener("click", ({ target }) => {
    if (arrowing || !isRadio(target)) return;
    take(meant(/** @type {HTMLInputElement} */ (target)));
  });
  root.addEventListener("input", ({ target }) => {
    if (!(target instanceof HTMLInputElement) || target.name !== "typed") return;
    formOf(target)?.removeAttribute("data-chosen");
    type(target.value);
  });
  root.addEventListener("submit", (event) => {
    event.preventDefault();
    const form = /** @type {HTMLFormElement} */ (event.target);
    const chosen = form.querySelector("input[name=answer]:checked");
    const typed = new FormData(form).get("typed");
    // What was answered before stays chosen; what is typed after it counts more.
    const counts = !typed || form.hasAttribute("data-chosen");
    if (chosen instanceof HTMLInputElement && counts) return take(meant(chosen));
    const { submitter } = /** @type {SubmitEvent} */ (event);
    const rest = submitter instanceof HTMLButtonElement && submitter.value === "rest";
    take({ means: "typed", value: String(typed ?? ""), rest });
  });
}

/** @param {EventTarget | null} target */
function isRadio(target) {
  return target instanceof HTMLInputElement && target.type === "radio";
}

/** Where the focus is after an answer. @param {EventTarget | null} target */
function isHeading(target) {
  return target instanceof HTMLElement && target.hasAttribute("data-heading");
}

/** @param {EventTarget | null} target */
function formOf(target) {
  return target instanceof Element ? target.closest("form") : null;
}

/** @param {HTMLInputElement} radio @returns {Taken} */
function meant(radio) {
  const means = /** @type {Taken["means"]} */ (radio.dataset.means);
  return { means, value: radio.value };
}

/**
 * A real keyboard works the keypad too.
 * @param {KeyboardEvent} event
 * @param {HTMLElement} root
 * @param {(key: string) => void} press
 */
function typeKey(event, root, press) {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  if (!root.querySelector("[data-act=key]") || isTyping(event.target)) return;
  if (event.key === "Enter" && isHeading(event.target)) formOf(event.target)?.requestSubmit();
  const key = event.key === "Backspace" ? "back" : event.key;
  if (key !== "back" && [...key].length !== 1) return;
  if (key === " ") return;
  event.preventDefault();
  press(key);
}

/** @param {EventTarget | null} target */
function isTyping(target) {
  return target instanceof HTMLSelectElement || target instanceof HTMLTextAreaElement;
}
