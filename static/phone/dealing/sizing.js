/**
 * A measure off a photo: beside a card or a coin, points are put on the photo, and the
 * length between two of them becomes the reading.
 */

import { begun, names, turned } from "../scale/marked.js";
import { CARD, SCALES } from "../scale/objects.js";
import { turn, undo } from "../scale/points.js";
import { needsFind, route, toClue } from "../routes.js";
import { listen, listenChanges, slot } from "../view/dom.js";
import { inPhoto } from "../view/measure.js";
import { byId } from "../view/reading.js";
import { drawFrame, drawHint, drawNothing, drawResult, drawTap, isFramed, saySizing, speak } from "../view/sizing.js";
import { clearPhoto, handles, layPhoto, liftLens, movePoints, spot } from "../view/sizingphoto.js";
import { NONE, result, tapped } from "./sized.js";
import { listenDrag } from "./sizingdrag.js";
import { listenHands } from "./sizinghands.js";
import { startPhoto } from "./sizingphoto.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../engine/guide.js").Measure} Measure */
/** @typedef {import("../log/photo.js").Photo} Photo */
/** @typedef {import("../routes.js").Route} Route */
/** @typedef {import("../scale/marked.js").Marked} Marked */
/** @typedef {import("../view/sizingphoto.js").Shot} Shot */
/**
 * What is measured, and what was done for it so far.
 * @typedef {object} Work
 * @property {string} whose
 * @property {string} name of the clue
 * @property {Measure} kind of the clue
 * @property {Shot | null} shot
 * @property {Marked | null} marked
 */

/** A hand has come to rest after so many milliseconds. */
const REST = 150;
const SPOKEN = 600;

/** @type {Work | null} */
let work = null;
/** What lies beside it; people mostly use the same. @type {import("../scale/objects.js").Card | import("../scale/objects.js").Coin} */
let scale = CARD;
let [resting, speaking] = [0, 0];

/** @param {HTMLElement} root @param {App} app */
export function startSizing(root, app) {
  const hands = {
    now: () => work?.marked ?? null,
    change: (/** @type {Marked} */ next, /** @type {any} */ finger = null) =>
      change(root, next, finger),
  };
  listenHands(root, hands);
  listenDrag(root, hands);
  startPhoto(root, app, {
    name: () => work?.name ?? "",
    say: (sentence) => saySizing(root, sentence),
    taking: () => {
      const mine = work;
      // Whoever is measuring something else by now does not want it.
      return (photo) => void (mine && mine === work && show(root, mine, photo));
    },
  });
  listen(root, {
    "next-point": () => choose(root, (state) => turn(state, 1)),
    "undo-point": () => choose(root, undo),
    turn: () => work?.marked && change(root, turned(work.marked)),
    "take-size": () => takeSize(root, app),
  });
  listenChanges(root, { scale: (id) => rescale(root, id) });
  // Another find may follow, with another object.
  window.addEventListener("hashchange", () => {
    if (!needsFind(route(location.hash).screen)) forget(root);
  });
}

/** @param {HTMLElement} root @param {Route} wanted @param {App} app */
export function drawSizing(root, wanted, app) {
  const [desk, question] = [app.desk(), app.asked()];
  const back = toClue(wanted.clue ?? "", wanted.member);
  const clue = question?.clue;
  const asks = clue?.id === wanted.clue && question?.places.length === 1;
  if (!desk || !clue || !asks || clue.kind.name !== "measure" || !inPhoto(clue.kind)) {
    forget(root);
    return drawNothing(root, back);
  }
  const whose = `${desk.guide.id} ${clue.id} ${question.places}`;
  if (work?.whose === whose && isFramed(root, whose)) return;
  forget(root);
  work = { whose, name: clue.name, kind: clue.kind, shot: null, marked: null };
  drawFrame(root, { whose, ask: clue.ask, where: clue.where, back, scale });
}

/** Gives the photo back, and what was put on it. @param {HTMLElement} root */
function forget(root) {
  clearTimeout(resting);
  clearTimeout(speaking);
  if (work?.shot) URL.revokeObjectURL(work.shot.url);
  if (work?.shot) clearPhoto(root);
  work = null;
}

/** The photo has come. @param {HTMLElement} root @param {Work} mine @param {Photo} photo */
function show(root, mine, { bytes, width, height }) {
  if (mine.shot) URL.revokeObjectURL(mine.shot.url);
  const url = URL.createObjectURL(new Blob([bytes], { type: "image/jpeg" }));
  mine.shot = { url, width, height };
  saySizing(root, "");
  begin(root, mine.shot);
  handles(root)[0].focus({ preventScroll: true });
  slot(root, "work").scrollIntoView({ block: "start" });
}

/** All points where they begin. @param {HTMLElement} root @param {Shot} shot */
function begin(root, shot) {
  layPhoto(root, shot, names(scale));
  const { width, height } = shot;
  change(root, begun({ width, height }, scale));
}

/** @param {HTMLElement} root @param {string} id */
function rescale(root, id) {
  scale = byId(SCALES, id);
  drawHint(root, scale);
  if (work?.shot) begin(root, work.shot);
}

/**
 * The points are as they are now: what is cheap is drawn at once, the size when the hand
 * rests.
 * @param {HTMLElement} root @param {Marked} next
 * @param {import("../scale/plane.js").Point | null} [finger]
 */
function change(root, next, finger = null) {
  if (!work) return;
  work.marked = next;
  movePoints(root, next, scale, names(scale));
  drawTap(root, tapped(next, scale));
  liftLens(root, finger);
  clearTimeout(resting);
  clearTimeout(speaking);
  resting = window.setTimeout(() => drawResult(root, resultNow()), REST);
  speaking = window.setTimeout(() => speak(root, spoken(next)), SPOKEN);
}

/** @param {HTMLElement} root @param {(state: Marked) => object} event */
function choose(root, event) {
  if (work?.marked) change(root, { ...work.marked, ...event(work.marked) });
}

function resultNow() {
  return work?.marked ? result(work.marked, scale, work.kind) : NONE;
}

/** Where the chosen point is, and what came of it. @param {Marked} state */
function spoken(state) {
  const { todo, say, wrong } = resultNow();
  const where = spot(state.points[state.active]);
  return [`${names(scale)[state.active]}: ${where}.`, todo, say, wrong].filter(Boolean).join(" ");
}

/** @param {HTMLElement} root @param {App} app */
function takeSize(root, app) {
  const { reading } = resultNow();
  if (!reading) return;
  forget(root);
  app.take({ means: "reading", value: reading });
}
