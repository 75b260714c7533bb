/** How a photo to measure in is taken, drawn: from above, and from the side. */

import { picture } from "./picture.js";

/** @typedef {import("./picture.js").Drawn} Drawn */

/** From above: an object, its length lit, and a card and a coin beside it. */
const ABOVE = [
  ["art__body", "M14 66c0-14 8-22 22-24l74-10c14-2 22 6 22 18v26c0 12-8 20-22 18l-74-8c-14-2-22-8-22-20z"],
  ["art__card", "M22 112h84a5 5 0 0 1 5 5v44a5 5 0 0 1-5 5H22a5 5 0 0 1-5-5v-44a5 5 0 0 1 5-5z"],
  ["art__line", "M17 126h94"],
  ["art__card", "M148 139a16 16 0 1 0-32 0 16 16 0 1 0 32 0z"],
  ["art__lit", "M14 66h118M14 54v24M132 54v24"],
];
/** From the side: the phone straight above, and both tops at one height. */
const BESIDE = [
  ["art__body", "M206 14h76v9h-76z"],
  ["art__sight", "M240 26L190 128M248 26L298 128"],
  ["art__line", "M172 166h136"],
  ["art__body", "M184 130h50v35h-50z"],
  ["art__tone", "M250 136h46v29h-46z"],
  ["art__card", "M246 130h54v6h-54z"],
  ["art__lit", "M184 130h50"],
  ["art__level", "M174 130h10M234 130h12M300 130h10"],
];

/** The drawing; the words beside it say the same. */
export function drawArt() {
  const box = { class: "art", viewBox: "0 0 320 176", "aria-hidden": "true" };
  return picture(["svg", Object.entries(box), [...ABOVE, ...BESIDE].map(line)]);
}

/** @param {string[]} drawn @returns {Drawn} */
function line([name, d]) {
  return [
    "path",
    [
      ["class", name],
      ["d", d],
    ],
    [],
  ];
}
