/**
 * The entry of the fifth script: practice rounds on invented specimens. It is fetched
 * when somebody practises for the first time.
 */

import { started } from "./kept/started.js";
import { drawPractice, startPractice } from "./practice/practice.js";

/** @type {import("./kept/started.js").Screens} */
const SCREENS = { practice: [startPractice, drawPractice] };

/** Listens on its screen, and gives what draws it. @param {import("./kept.js").App} app */
export const start = (app) => started(SCREENS, app);
