/** @param {HTMLElement} root @param {import("../kept.js").App} app */
export function startWants(root, app) {}

/**
 * @param {HTMLElement} root
 * @param {import("../routes.js").Route} wanted
 * @param {import("../kept.js").App} app
 */
export function drawWants(root, wanted, app) {
  root.replaceChildren();
}
