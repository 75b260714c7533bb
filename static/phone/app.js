/**
 * The entry: the only module that sees the engine, the session, the store and the
 * views. A tap becomes an event, the event a session, the session a verdict, and the
 * verdict is drawn; nothing flows the other way.
 */

import { startCheck } from "./checking.js";
import { asked, laid } from "./desk.js";
import { startDevice } from "./device.js";
import { keep, last, rememberLast, taken } from "./keeping.js";
import { needsFind, route, toClue } from "./routes.js";
import { arrive, at, drawScreen, screenOf } from "./screens.js";
import * as session from "./session.js";
import { opened } from "./shelf.js";
import { listenAnswers } from "./view/answering.js";
import { listen, listenChanges } from "./view/dom.js";
import { dismiss, notify } from "./view/frame.js";
import { drawDraft } from "./view/home.js";
import { copyFind } from "./view/keep.js";
import { incomplete, press } from "./view/keypad.js";
import { moveMark, parse, unfit } from "./view/measure.js";
import { clueAt } from "./view/places.js";

/** Errors whose message is a whole sentence for the user. */
const SPOKEN = ["DraftError", "ShelfError", "StoreError"];

/** One desk a guide that was opened or kept. @type {Map<string, any>} */
const desks = new Map();
/** The desk in use. @type {any} */
let now = null;
/** What is being typed into the question that is shown. */
let entry = { clue: "", typed: "", wrong: "" };

/** What was said of the store; each of its sentences is said once. @type {Set<string>} */
const told = new Set();

const say = (/** @type {string} */ sentence) => notify(at("[data-banner]"), sentence);

/** @param {Error} error */
function failed(error) {
  if (error?.name === "StoreError" && told.has(error.message)) return;
  told.add(error?.message);
  if (SPOKEN.includes(error?.name)) return say(error.message);
  say(
    `Something went wrong here (${error?.message ?? "no reason was given"}). Your readings are kept. If it does not go on, close the app and open it again.`,
  );
}

/** Lays out a session as the one in use. @param {any} shelved @param {any} next */
function lay(shelved, next) {
  now = laid(shelved, next);
  desks.set(now.guide.id, now);
}

/** Draws the screen that the address names. */
function draw() {
  const { screen, clue: wanted } = route(location.hash);
  if (!now || !needsFind(screen)) {
    drawHome();
    return drawScreen(needsFind(screen) ? "home" : screen, {});
  }
  const clue = asked(now, wanted);
  if (clue && entry.clue !== clue.id) entry = { clue: clue.id, typed: before(clue), wrong: "" };
  drawScreen(screen, { ...now, ...entry, clue });
}

/** What was typed for a clue when it was read. @param {any} clue */
function before({ id }) {
  return String(new Map(now.session.readings).get(id) ?? "");
}

/** An event has changed the session: judge, draw, and keep it last. @param {any} next */
function step(next) {
  if (next === now.session) return draw();
  lay(now, next);
  entry = { clue: "", typed: "", wrong: "" };
  draw();
  keep(now).catch(failed);
}

/** After an answer: on to the next question. @param {any} next */
function goOn(next) {
  history.replaceState(null, "", "#look");
  step(next);
  arrive();
}

/** @param {import("./view/answering.js").Taken} answer */
function take({ means, value }) {
  const clue = asked(now, route(location.hash).clue);
  if (means === "gone") return goOn(session.lose(now.session, clue.part, now.guide));
  if (means === "cannot") return goOn(session.answer(now.session, clue.id, null));
  if (means === "reading") return goOn(noted(clue, value));
  if (clue.kind.name === "code") return takeTyped(clue, entry.typed, incomplete(clue.kind.fields, entry.typed), entry.typed);
  if (clue.kind.name === "measure") takeTyped(clue, value, unfit(clue.kind, value), parse(value));
}

/** @param {any} clue @param {string} typed @param {string} wrong @param {any} reading */
function takeTyped(clue, typed, wrong, reading) {
  if (!wrong) return goOn(noted(clue, reading));
  entry = { clue: clue.id, typed, wrong };
  draw();
  at("#size, [data-act=key]").focus();
}

/** The session with a reading; a part that is read cannot be gone. @param {any} clue @param {any} reading */
function noted(clue, reading) {
  return session.answer(session.regain(now.session, clue.part), clue.id, reading);
}

/** @param {string} key */
function pressKey(key) {
  const { fields } = asked(now, entry.clue).kind;
  const typed = press(fields, entry.typed, key);
  entry = { ...entry, typed, wrong: "" };
  draw();
}

/** Opens the questions of a guide, from the start or where they were left. @param {string} id @param {boolean} afresh */
async function look(id, afresh) {
  const shelved = await opened(id);
  lay(shelved, (!afresh && desks.get(id)?.session) || session.begin(id));
  rememberLast(id);
  keep(now).catch(failed);
  if (location.hash !== "#look") location.hash = "#look";
  else draw();
}

function drawHome() {
  for (const [guide, { session: kept, verdict }] of desks) {
    const worth = kept.readings.length > 0 || kept.gone.length > 0;
    drawDraft(screenOf("home"), guide, worth ? { readings: kept.readings, say: verdict.say } : null);
  }
}

/** @param {string} value @param {boolean} on @param {DOMStringMap} data */
function changeTools(value, on, { tool = "" }) {
  const others = now.session.without.filter((/** @type {string} */ each) => each !== tool);
  step(session.without(now.session, on ? [...others, tool] : others));
}

/** @param {string} clue @param {boolean} on */
function changeCites(clue, on) {
  const { model_year, cites } = now.session.claim;
  const others = cites.filter((/** @type {string} */ each) => each !== clue);
  step(session.claim(now.session, { model_year, cites: on ? [...others, clue] : others }));
}

/** @param {string} year */
function changeClaim(year) {
  const cites = now.session.claim?.cites ?? [];
  step(session.claim(now.session, year ? { model_year: Number(year), cites } : null));
}

function listenAll() {
  listen(screenOf("home"), {
    start: ({ guide = "" }, event) => {
      event.preventDefault();
      look(guide, true).catch(failed);
    },
    "go-on": ({ guide = "" }, event) => {
      event.preventDefault();
      look(guide, false).catch(failed);
    },
  });
  listenAnswers(screenOf("look"), {
    take,
    type: (typed) => {
      entry = { ...entry, typed, wrong: "" };
      moveMark(screenOf("look"), asked(now, entry.clue).kind, typed);
    },
    press: pressKey,
  });
  listen(screenOf("look"), { key: ({ key = "" }) => pressKey(key) });
  listen(screenOf("places"), {
    lose: ({ part = "" }) => step(session.lose(now.session, part, now.guide)),
    regain: ({ part = "" }) => step(session.regain(now.session, part)),
    retract: ({ clue = "" }) => step(session.retract(now.session, clue)),
  });
  screenOf("places").addEventListener("click", (event) => {
    const clue = clueAt(event, now.guide, now.session);
    if (clue) location.hash = toClue(clue.id);
  });
  listen(screenOf("verdict"), { copy: () => void copyFind(screenOf("verdict"), now.find) });
  listen(at("[data-bar]"), {
    undo: () => {
      step(session.undo(now.session));
      if (route(location.hash).screen === "look") arrive();
    },
  });
  listen(at("[data-banner]"), { close: (_, event) => dismiss(at("[data-banner]"), event) });
  listenChanges(at("main"), {
    away: (_, on) => step(session.away(now.session, on)),
    without: changeTools,
    member: (value) => step(session.member(now.session, value || null)),
    claim: changeClaim,
    cite: changeCites,
  });
  window.addEventListener("hashchange", () => {
    draw();
    arrive();
  });
}

async function start() {
  listenAll();
  startCheck(screenOf("check"), failed);
  startDevice(screenOf("home"), async () => now && keep(now)).catch(failed);
  const cards = [...document.querySelectorAll("[data-guide-card]")];
  const guides = cards.map((card) => card.getAttribute("data-guide-card") ?? "");
  const recent = last();
  for (const { shelved, session: kept, lost } of await taken(guides, failed)) {
    const before = now;
    lay(shelved, kept);
    if (before && shelved.guide.id !== recent) now = before;
    lost.forEach(say);
  }
  draw();
}

window.addEventListener("error", ({ error }) => error && failed(error));
window.addEventListener("unhandledrejection", ({ reason }) => failed(reason));
start().catch(failed);
