/** @param {HTMLElement} root @param {import("../kept.js").App} app */
export function startPhoto(root, app) {}

/**
 * @param {HTMLElement} root
 * @param {import("../routes.js").Route} wanted
 * @param {import("../kept.js").App} app
 */
export function drawPhoto(root, wanted, app) {
  root.replaceChildren();
}
