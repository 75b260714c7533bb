/**
 * The entry of the sixth script: guides that somebody gave, as files. It is fetched where
 * there are some, or when one is to be added or given.
 */

import { drawGuests, startGuests } from "./guests/screen.js";
import { started } from "./kept/started.js";

/** @type {import("./kept/started.js").Screens} */
const SCREENS = { guests: [startGuests, drawGuests] };

/** Listens on its screen, puts the guides on Home, and gives what draws the screen. @param {import("./kept.js").App} app */
export const start = (app) => started(SCREENS, app);
