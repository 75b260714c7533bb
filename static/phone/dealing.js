/**
 * The entry of the fourth script: what is worked out from a find, an offer, a match with
 * what is wanted, a size off a photo; and the check of this phone, which few run.
 */

import { drawCheckOnce, startCheck } from "./checking.js";
import { drawOffer, startOffer } from "./dealing/offer.js";
import { drawSizing, startSizing } from "./dealing/sizing.js";
import { drawWants, startWants } from "./dealing/wants.js";
import { started } from "./kept/started.js";

/** @type {import("./kept/started.js").Screens} */
const SCREENS = {
  offer: [startOffer, drawOffer],
  sizing: [startSizing, drawSizing],
  wants: [startWants, drawWants],
  check: [startCheck, drawCheckOnce],
};

/** Listens on its screens, and gives what draws each. @param {import("./kept.js").App} app */
export const start = (app) => started(SCREENS, app);
