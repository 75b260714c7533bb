/** Small photos in a list, made when they come into sight: each takes a phone its time. */

import { book } from "../log/book.js";
import { makeThumb } from "../log/photo.js";
import { shown } from "../view/shown.js";
import { sentence } from "./sentence.js";

/** @typedef {import("../log/record.js").Entry} Entry */

/** So much before they come into sight. */
const AHEAD = "200px";
const DAMAGED = "Photo damaged";

/**
 * What fills a place with an entry's first photo, once the place is near the screen.
 * @param {(error: Error) => void} failed
 * @returns {(place: HTMLElement, entry: Entry) => void}
 */
export function thumbs(failed) {
  /** @type {WeakMap<Element, Entry>} */
  const wanted = new WeakMap();
  const watch = new IntersectionObserver(
    (seen) => {
      for (const { isIntersecting, target } of seen) {
        const entry = wanted.get(target);
        if (!isIntersecting || !entry) continue;
        watch.unobserve(target);
        fill(target, entry).catch(failed);
      }
    },
    { rootMargin: AHEAD },
  );
  return (place, entry) => {
    wanted.set(place, entry);
    watch.observe(place);
  };
}

/** @param {Element} place @param {Entry} entry */
async function fill(place, entry) {
  const [first] = await book.photosOf(entry);
  // Gone meanwhile, with its row.
  if (!first) return;
  try {
    const { bytes } = await makeThumb(first.bytes);
    place.replaceChildren(shown(bytes, ""));
  } catch (error) {
    place.textContent = sentence(error) && DAMAGED;
  }
}
