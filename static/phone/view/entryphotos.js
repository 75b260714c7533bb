/** The photos of a find: each with what it shows, one of them large, and ways to add more. */

import { capital } from "../engine/words.js";
import { ACCEPT } from "../log/photo.js";
import { element, keepingFocus, piece, set, slot } from "./dom.js";
import { shown } from "./shown.js";

/** @typedef {import("../engine/guide.js").Clue} Clue */
/** @typedef {import("../log/entries.js").Photo} Photo */
/** @typedef {import("../log/record.js").PhotoNote} PhotoNote */

const CANNOT_SHOW = "This photo is damaged and cannot be shown.";

/**
 * The figures of photos, each made once; as long as they are on the page, their images
 * are not read again.
 * @returns {Map<string, HTMLElement>}
 */
export const figures = () => new Map();

/**
 * Fills in the photos, and what may still be added.
 * @param {HTMLElement} root
 * @param {object} photos
 * @param {readonly PhotoNote[]} photos.notes
 * @param {readonly Photo[]} photos.there their bytes, as far as they are there
 * @param {readonly Clue[]} photos.clues what they can show
 * @param {number} photos.left how many may still be added
 * @param {Map<string, HTMLElement>} photos.made figures of this screen
 */
export function fillPhotos(root, { notes, there, clues, left, made }) {
  const drawn = notes.map((note, place) => {
    const bytes = there.find(({ id }) => id === note.id)?.bytes;
    const figure = made.get(note.id) ?? drawnPhoto(note, bytes);
    made.set(note.id, figure);
    return named(figure, note, `photo ${place + 1}`, clues);
  });
  keepingFocus(root, () => slot(root, "photos").replaceChildren(...drawn));
  slot(root, "none").hidden = notes.length > 0;
  slot(root, "full").hidden = left > 0;
  slot(root, "ways").hidden = left === 0;
  for (const input of ["from-camera", "from-gallery"]) set(slot(root, input), { accept: ACCEPT });
  // A mouse has no camera to point with.
  slot(root, "camera").hidden = !matchMedia("(pointer: coarse)").matches;
}

/** @param {PhotoNote} note @param {ArrayBuffer | undefined} bytes */
function drawnPhoto({ id, width, height }, bytes) {
  const made = piece("entry-photo");
  for (const name of ["larger", "clue", "remove"]) slot(made, name).dataset.photo = id;
  const place = slot(made, "larger");
  const fail = () => place.replaceChildren(CANNOT_SHOW);
  if (!bytes) fail();
  else place.replaceChildren(set(shown(bytes, "", fail), { width, height }));
  return made;
}

/**
 * The figure with its place among the others, and what it can show.
 * @param {HTMLElement} figure @param {PhotoNote} note
 * @param {string} name @param {readonly Clue[]} clues
 */
function named(figure, { clue }, name, clues) {
  slot(figure, "name").textContent = capital(name);
  set(slot(figure, "larger"), { "aria-label": `Show ${name} large` });
  set(slot(figure, "remove"), { "aria-label": `Remove ${name}` });
  set(slot(figure, "clue"), { "aria-label": `It shows, ${name}` });
  slot(figure, "shows").hidden = clues.length === 0;
  slot(figure, "clue").replaceChildren(...options(clues, clue));
  return figure;
}

/** @param {readonly Clue[]} clues @param {string | null} chosen */
function options(clues, chosen) {
  const known = clues.map(({ id, name }) => [id, capital(name)]);
  // The guide of today may not have it.
  const isLost = chosen !== null && !clues.some(({ id }) => id === chosen);
  const all = [["", "the whole object"], ...known, ...(isLost ? [[chosen, chosen]] : [])];
  return all.map(([value, label]) =>
    set(element("option", "", label), { value, selected: value === (chosen ?? "") }),
  );
}

/**
 * Shows a photo as large as the screen.
 * @param {HTMLElement} root
 * @param {ArrayBuffer} bytes
 * @param {string} name
 */
export function showLarge(root, bytes, name) {
  const dialog = /** @type {HTMLDialogElement} */ (slot(root, "large"));
  slot(root, "largest").replaceChildren(shown(bytes, name));
  set(dialog, { "aria-label": name });
  dialog.showModal();
}

/** @param {HTMLElement} root */
export function closeLarge(root) {
  slot(root, "largest").replaceChildren();
  slot(root, "large").close();
}
