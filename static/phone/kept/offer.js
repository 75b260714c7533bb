/** @param {HTMLElement} root @param {import("../kept.js").App} app */
export function startOffer(root, app) {}

/**
 * @param {HTMLElement} root
 * @param {import("../routes.js").Route} wanted
 * @param {import("../kept.js").App} app
 */
export function drawOffer(root, wanted, app) {
  root.replaceChildren();
}
