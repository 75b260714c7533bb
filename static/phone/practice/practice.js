/** Practice: begins rounds, takes looks and answers, and keeps what was played. */

import { attempt, sentence } from "../kept/sentence.js";
import { focusHeading, listen, slot } from "../view/dom.js";
import { drawRound, fillRound, hideMissing, showMissing, toAnswer } from "../view/practice.js";
import { drawNone, drawStart } from "../view/practicestart.js";
import { drawTold } from "../view/practicetold.js";
import { told } from "./feedback.js";
import { freeSeed, withBegun, withRound } from "./kept.js";
import { inMemory, keepBegun, keepRound, known } from "./practicebook.js";
import { begin, laid, look } from "./round.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../shelf.js").Opened} Opened */
/** @typedef {import("./kept.js").Begun} Begun */
/** @typedef {import("./kept.js").Practised} Practised */
/** @typedef {import("./round.js").Laid} Laid */
/**
 * What is shown: a round where one was begun, what the last one teaches where it was
 * answered, else the way in.
 * @typedef {object} Shown
 * @property {Opened} opened
 * @property {Practised} kept
 * @property {Laid | null} laid the specimen of the round
 */

const ONLY_RANGE = "This guide answers with a range of years, so there is no one year to practise.";
const ONE_YEAR = "This guide knows one model year alone, so there is nothing to practise.";
const UNKNOWN = "There is no such guide on this phone.";
const UPDATED = "The guide was updated, so the round that was begun is dropped.";
const ELSEWHERE = "Another page answered this round already; that answer counts.";

/** @type {Shown | null} */
let shown = null;
/** Whose practice is being fetched: what arrives for another is too late. */
let wantedGuide = "";

/** @param {HTMLElement} root @param {App} app */
export function startPractice(root, app) {
  listen(root, {
    begin: () => beginRound(root, app),
    look: ({ clue = "" }) => takeLook(root, app, clue),
    "to-answer": () => toAnswer(root),
  });
  root.addEventListener("change", ({ target }) => choose(root, app, /** @type {HTMLInputElement} */ (target)));
  root.addEventListener("submit", (event) => {
    event.preventDefault();
    takeAnswer(root, app, new FormData(/** @type {HTMLFormElement} */ (event.target)));
  });
}

/** @param {HTMLElement} root @param {import("../routes.js").Route} wanted @param {App} app */
export function drawPractice(root, { id }, app) {
  wantedGuide = id ?? "";
  // What is shown of this guide stays as it is: its answer may be half chosen.
  if (shown?.opened.guide.id === wantedGuide && root.childElementCount) return;
  shown = null;
  if (!app.cards.some((card) => card.id === wantedGuide)) return drawNone(root, UNKNOWN);
  root.replaceChildren();
  attempt(() => load(root, app, wantedGuide), (why) => drawNone(root, why), app.failed);
}

/** @param {HTMLElement} root @param {App} app @param {string} guide */
async function load(root, app, guide) {
  const opened = await app.opened(guide);
  const { verdict, years } = opened.guide;
  if (guide !== wantedGuide) return;
  if (verdict !== "year") return drawNone(root, ONLY_RANGE);
  if (years.length < 2) return drawNone(root, ONE_YEAR);
  const { kept, said } = await keptOf(opened);
  if (guide !== wantedGuide) return;
  shown = { opened, kept, laid: null };
  draw(root);
  say(root, said);
}

/** What is kept of a guide, and what is to be said of it. @param {Opened} opened */
async function keptOf({ guide, stamp }) {
  const found = await known(guide.id).catch((error) => ({ kept: inMemory(guide.id), unread: "", failed: sentence(error) }));
  const unread = found.unread && `What was kept of your practice cannot be read, and is set aside. ${found.unread}`;
  const said = "failed" in found ? found.failed : unread;
  const { begun, answered } = found.kept;
  const isOld = begun !== null && begun.stamp !== stamp;
  const kept = {
    ...found.kept,
    begun: isOld ? null : begun,
    // What it taught was of the guide as it was then.
    answered: answered?.stamp === stamp ? answered : null,
  };
  return { kept, said: isOld ? [said, UPDATED].filter(Boolean).join(" ") : said };
}

/** @param {HTMLElement} root */
function draw(root) {
  const now = /** @type {Shown} */ (shown);
  const { opened: { guide, tables }, kept } = now;
  root.style.removeProperty("--used");
  if (kept.begun) {
    now.laid = laid(tables, kept.begun);
    drawRound(root, playing(now, kept.begun));
  } else if (kept.answered) drawAnswered(root, now, kept.answered);
  else drawStart(root, guide.title, kept.rounds);
  // Whoever has gone elsewhere meanwhile stays there.
  if (root.hidden) return;
  focusHeading(root);
  window.scrollTo(0, 0);
}

/** @param {HTMLElement} root @param {Shown} now @param {Begun} answered */
function drawAnswered(root, { opened: { guide, tables }, kept: { rounds } }, answered) {
  const answer = { said: Number(answered.said), sure: Number(answered.sure) };
  drawTold(root, { guide, laid: laid(tables, answered), told: told(tables, answered, answer), rounds });
}

/** @param {Shown} now @param {Begun} begun */
const playing = (now, begun) => ({ guide: now.opened.guide, laid: /** @type {Laid} */ (now.laid), begun });

/** @param {HTMLElement} root @param {App} app */
function beginRound(root, app) {
  const now = /** @type {Shown} */ (shown);
  const { guide, stamp } = now.opened;
  const [random] = crypto.getRandomValues(new Uint32Array(1));
  const { rounds } = now.kept;
  const begun = { ...begin(guide, rounds, freeSeed(rounds, random >>> 1)), stamp, said: null, sure: null };
  now.kept = withBegun(now.kept, begun);
  draw(root);
  keep(root, app, () => keepBegun(guide.id, begun));
}

/** @param {HTMLElement} root @param {App} app @param {string} clue */
function takeLook(root, app, clue) {
  const now = /** @type {Shown} */ (shown);
  const { begun } = now.kept;
  if (!begun) return;
  const { guide } = now.opened;
  const next = { ...begun, ...look(guide, begun, clue) };
  if (next.looks === begun.looks) return;
  now.kept = { ...now.kept, begun: next };
  fillRound(root, playing(now, next), clue);
  keep(root, app, () => keepBegun(guide.id, next));
}

/** Keeps what is chosen of the answer. @param {HTMLElement} root @param {App} app @param {HTMLInputElement} chosen */
function choose(root, app, { name, value }) {
  hideMissing(root);
  const now = /** @type {Shown} */ (shown);
  if (!now.kept.begun) return;
  const part = name === "year" ? { said: Number(value) } : { sure: Number(value) / 100 };
  const begun = { ...now.kept.begun, ...part };
  now.kept = withBegun(now.kept, begun);
  keep(root, app, () => keepBegun(now.opened.guide.id, begun));
}

/** @param {HTMLElement} root @param {App} app @param {FormData} form */
function takeAnswer(root, app, form) {
  const now = /** @type {Shown} */ (shown);
  const { begun } = now.kept;
  if (!begun) return;
  for (const name of /** @type {const} */ (["year", "sure"])) if (!form.get(name)) return showMissing(root, name);
  const { guide } = now.opened;
  const said = Number(form.get("year"));
  const sure = Number(form.get("sure")) / 100;
  const round = { seed: begun.seed, year: begun.year, said, sure, years: guide.years.length };
  const answered = { ...begun, said, sure };
  now.kept = withRound(now.kept, round, answered);
  draw(root);
  keep(root, app, async () => {
    await keepRound(guide.id, round, answered);
    await meet(root, now, round);
  });
}

/** Counts what another page has played meanwhile. @param {HTMLElement} root @param {Shown} now @param {import("./kept.js").Round} round */
async function meet(root, now, round) {
  const { kept } = await known(now.opened.guide.id);
  const first = kept.rounds.find(({ seed }) => seed === round.seed);
  now.kept = { ...kept, begun: now.kept.begun, answered: now.kept.answered };
  const isOther = first?.said !== round.said || first.sure !== round.sure;
  if (isOther && shown === now) say(root, ELSEWHERE);
}

/**
 * Keeps it, or says why it cannot be kept: here, and over the page for whoever has gone
 * elsewhere. Practice goes on either way.
 * @param {HTMLElement} root @param {App} app @param {() => Promise<void>} work
 */
function keep(root, app, work) {
  const now = /** @type {Shown} */ (shown);
  const tell = (/** @type {string} */ why) => (isSeen(root, now) ? say(root, why) : app.say(why));
  attempt(work, tell, app.failed);
}

/** Whether it is on the screen still. @param {HTMLElement} root @param {Shown} now */
const isSeen = (root, now) => shown === now && !root.hidden;

/** @param {HTMLElement} root @param {string} why */
function say(root, why) {
  slot(root, "said").textContent = why;
}
