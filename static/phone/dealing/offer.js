/** Offer. */

/** @typedef {import("../kept.js").App} App */

/** @param {HTMLElement} root @param {App} app */
export function startOffer(root, app) {}

/** @param {HTMLElement} root @param {import("../routes.js").Route} wanted @param {App} app */
export function drawOffer(root, wanted, app) {}
