/** In place of phone/keeping.js: nothing is kept, and whoever would lose a find is asked. */

import { isSet, isTouched } from "../phone/scope.js";

/** The guides about whose objects something was read. @type {Set<string>} */
const begun = new Set();

/**
 * Notes whether anything would be lost with the page.
 * @param {import("../phone/desk.js").Desk} desk
 */
export async function keep({ session, guide }) {
  const worth = isSet(session) || session.items.some(isTouched);
  if (worth) begun.add(guide.id);
  else begun.delete(guide.id);
}

window.addEventListener("beforeunload", (event) => {
  if (begun.size) event.preventDefault();
});

/** Nothing was kept. @returns {Promise<any[]>} */
export const taken = async () => [];

/** No guide was open last. @returns {string | null} */
export const last = () => null;

export function rememberLast() {}
