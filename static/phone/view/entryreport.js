/** What the report of a find may tell besides, and the ways to hand it on. */

import { slot } from "./dom.js";

/** @typedef {import("../log/record.js").Entry} Entry */

/**
 * Fills in what can be ticked, and which ways there are.
 * @param {HTMLElement} root
 * @param {Entry} entry
 * @param {{there: boolean, printable: boolean}} can
 */
export function fillReport(root, { place, asked, paid }, { there, printable }) {
  slot(root, "report").hidden = !there;
  slot(root, "tick-place").hidden = !place;
  slot(root, "tick-prices").hidden = asked === null && paid === null;
  slot(root, "report-share").hidden = !("share" in navigator);
  slot(root, "report-print").hidden = !printable;
  slot(root, "report-unprinted").hidden = printable;
}

/** What the person wants told. @param {HTMLElement} root */
export function ticked(root) {
  const [place, prices] = ["with-place", "with-prices"].map((name) => slot(root, name));
  return { place: isOn(place), prices: isOn(prices) };
}

/** A box that is out of sight was not ticked for this. @param {HTMLInputElement} box */
const isOn = (box) => box.checked && !box.closest("label")?.hidden;
