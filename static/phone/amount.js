/** A number as people type it. */

/**
 * The number, with a comma or a point; null if it is none.
 * @param {string} typed
 */
export function amount(typed) {
  const text = typed.trim().replace(",", ".");
  return /^\d+(\.\d*)?$|^\.\d+$/.test(text) ? Number(text) : null;
}
