/**
 * A find: the only module that sees the engine, the session, the store and the views. A
 * tap becomes an event, the event a session, the session a verdict, and the verdict is
 * drawn; nothing flows the other way.
 */

import { foresee, led } from "./ahead.js";
import { breath, paced } from "./breath.js";
import { alone, asked, laid, laying } from "./desk.js";
import { failed, say } from "./failing.js";
import { furnish } from "./furnish.js";
import { guestIds } from "./guests/known.js";
import { keep, last as lastOpen, rememberLast, taken } from "./keeping.js";
import { addMembers, pick, rename } from "./members.js";
import { isLater, needsFind, route, toClue, TO_REST, toStart } from "./routes.js";
import { ALL, isSet, isTouched, reading } from "./scope.js";
import { drawScreen, followFrame } from "./screens.js";
import { letter, startSeller } from "./seller.js";
import * as session from "./session.js";
import { opened, ShelfError } from "./shelf.js";
import { cited, claimed, lacking, withMember } from "./steps.js";
import { START } from "./swing.js";
import { into, isLeft, meant, NOTHING, pressed, typing } from "./typing.js";
import { listenAnswers } from "./view/answering.js";
import { at, listen, listenChanges, screenOf } from "./view/dom.js";
import { cardsOf, drawDraft } from "./view/home.js";
import { copyStory } from "./view/keep.js";
import { moveMark } from "./view/measure.js";
import { clueAt } from "./view/places.js";
import { listenSet } from "./view/set.js";
import { listenSwing, moveSwing } from "./view/swing.js";

/** @typedef {import("./engine/guide.js").Clue} Clue */
/** @typedef {import("./desk.js").Question} Question */
/** @typedef {import("./routes.js").Route} Route */

/** One desk a guide that was opened or kept. @type {Map<string, import("./desk.js").Desk>} */
const desks = new Map();
/** What draws each screen of the later scripts, once those are there. @type {Record<string, (wanted: Route) => void>} */
const laters = {};
/** That all of them are there; whether there are guides from files. @type {Promise<boolean>} */
let last = Promise.resolve(false);
/** Of the screens that few need, that each is there too, once it was asked for. @type {Map<string, Promise<void>>} */
const rare = new Map();
/** How each of them is asked for, and what it is called. @type {Record<string, [() => Promise<any>, string]>} */
const RARE = {
  practice: [() => import("./practice.js"), "Practice is"],
  guests: [() => import("./guests.js"), "Adding guides is"],
};
/** What is told of each verdict that is shown. @type {((root: HTMLElement, desk: import("./desk.js").Desk) => void)[]} */
const verdictListeners = [];
/** The guides that there are. */
const cards = cardsOf(screenOf("home"));
/** The desk in use. @type {any} */
let now = null;
/** What is being typed into the question that is shown. */
let entry = NOTHING;

/** Puts a desk in use. @param {import("./desk.js").Desk} desk */
function use(desk) {
  now = desk;
  desks.set(now.guide.id, now);
}

/**
 * Draws the screen that the address names.
 * @param {boolean} [arriving] whether it is another one for the user: from its top then
 */
function draw(arriving = false) {
  const wanted = route(location.hash);
  if (!now || !needsFind(wanted.screen)) {
    drawHome();
    const other = needsFind(wanted.screen) ? "home" : wanted.screen;
    return drawScreen(other, { draw: isLater(other) ? drawnLater(wanted) : undefined }, arriving);
  }
  const screen = possible(wanted.screen, now.guide);
  const data = screen === "verdict" ? judged(wanted) : questioned(wanted);
  const said = screen === "seller" ? { letter: letter(now) } : {};
  const drawn = isLater(screen) ? drawnLater(wanted) : undefined;
  drawScreen(screen, { ...data, ...said, draw: drawn }, arriving);
  if (screen === "verdict") verdictListeners.forEach((listener) => listener(screenOf(screen), data));
  if (screen === "look" && data.places.length) foresee(now, data).catch(failed);
}

/** How a screen of the later scripts is drawn: at once, or when its script is there. @param {Route} wanted */
const drawnLater = (wanted) => () => {
  const drawn = laters[wanted.screen];
  if (drawn) return drawn(wanted);
  screenOf(wanted.screen).replaceChildren();
  arrived(wanted.screen).then(() => draw(true)).catch(failed);
};

/** In place of a question where there is none. */
const NOBODY = { clue: null, places: [], open: [] };

/** The screen, or one that the guide has in its place. @param {string} screen @param {import("./shelf.js").Guide} guide */
const possible = (screen, { members }) => (screen === "set" && !members ? "places" : screen);

/** What a verdict is drawn from: of all, or of the member that the address names. @param {Route} wanted */
function judged({ member }) {
  const one = alone(now, member);
  return { ...(one ?? now), ...NOBODY, member: one && member, cards };
}

/** What is drawn with a question, be it shown or not. @param {Route} wanted */
function questioned(wanted) {
  const question = asked(now, wanted) ?? NOBODY;
  entry = into(entry, question, now.session.items);
  return { ...now, ...entry, ...question };
}

/** The question that is being asked. */
const questionNow = () => /** @type {Question} */ (asked(now, route(location.hash)));

/**
 * An event has changed the session: judge, draw, and keep it last.
 * @param {session.Session} next
 * @param {boolean} [arriving]
 */
function step(next, arriving = false) {
  stepTo(laid(now, next), arriving);
}

/** @param {import("./desk.js").Desk} desk @param {boolean} arriving */
function stepTo(desk, arriving) {
  if (desk.session === now.session) return draw(arriving);
  use(desk);
  entry = NOTHING;
  draw(arriving);
  keep(now).catch(failed);
}

/** After an answer: on to the next question. @param {import("./desk.js").Desk} desk */
function goOn(desk) {
  const { rest, clue } = route(location.hash);
  // Whoever chose the question from the list goes back to it, where lists come first.
  const back = clue ? toStart(now.guide) : "#look";
  moveTo(rest ? TO_REST : back);
  stepTo(desk, true);
}

/** Telling the browser what it knows costs a phone a tenth of a tap. @param {string} address */
function moveTo(address) {
  if (location.hash !== address) history.replaceState(null, "", address);
}

/** @param {import("./view/answering.js").Taken} answer */
function take(answer) {
  const { means, value, rest = false } = answer;
  const question = questionNow();
  const { clue, places, open } = question;
  if (means !== "typed" || typeof value !== "string") return goOn(led(now, question, answer));
  if (clue.kind.name === "choice") return;
  const typed = meant(clue.kind, value, reading(now.session.items[places[0]], clue.id));
  if (!typed.wrong) {
    return goOn(laid(now, session.answer(now.session, clue, typed.reading, rest ? open : places)));
  }
  enter({ ...entry, typed: value, wrong: typed.wrong });
  at("#size, [data-act=key]").focus({ preventScroll: true });
}

/** Draws what is typed, with what is wrong in sight. @param {import("./typing.js").Entry} next */
function enter(next) {
  entry = next;
  draw();
  if (next.wrong) at("[data-slot=wrong]").scrollIntoView({ block: "nearest" });
}

/** The question that is shown, put to another of the set. @param {string} place */
function pickAt(place) {
  const question = asked(now, route(location.hash));
  if (question && route(location.hash).screen === "look") moveTo(toClue(question.clue.id));
  step(pick(now.session, place === ALL ? ALL : Number(place)));
}

/** @param {string} key */
const pressKey = (key) => enter(pressed(entry, questionNow().clue.kind, key));

/**
 * Opens the questions of a guide, from the start or where they were left.
 * @param {string} id
 * @param {boolean} afresh
 */
async function look(id, afresh) {
  const shelved = await opened(id);
  use(laid(shelved, (!afresh && desks.get(id)?.session) || session.begin(id)));
  rememberLast(id);
  keep(now).catch(failed);
  const first = toStart(now.guide);
  if (location.hash !== first) location.hash = first;
  else draw();
}

function drawHome() {
  for (const [guide, { session: kept, verdict }] of desks) {
    const { items } = kept;
    const worth = isSet(kept) || items.some(isTouched);
    drawDraft(screenOf("home"), guide, worth ? { items, ...verdict } : null);
  }
}

/** Says what was typed into a question that is left without an answer. @param {string} left its address */
function remindOf(left) {
  const question = now && asked(now, route(left));
  if (!question || !isLeft(entry, question, now.session.items)) return;
  const { name } = question.clue;
  say(`“${entry.typed}” was typed for the ${name} and not taken. Go back to it to take it.`);
}

/** Goes on with a guide where it was left. @param {DOMStringMap} data @param {Event} event */
function goOnWith({ guide = "" }, event) {
  event.preventDefault();
  look(guide, false).catch(failed);
}

function listenAll() {
  listen(screenOf("home"), {
    start: ({ guide = "" }, event) => {
      event.preventDefault();
      look(guide, true).catch(failed);
    },
    "go-on": goOnWith,
  });
  listenAnswers(screenOf("look"), {
    take,
    type: (typed) => {
      entry = typing(entry, typed);
      const { kind } = questionNow().clue;
      if (kind.name === "measure") moveMark(screenOf("look"), kind, typed);
    },
    press: pressKey,
  });
  listenSwing(screenOf("look"), {
    now: () => entry.swing ?? START,
    type: (swing) => {
      entry = { ...entry, swing };
      moveSwing(screenOf("look"), swing);
    },
    take: (typed) => {
      enter(typing(entry, typed));
      at("#size").focus();
    },
  });
  listen(screenOf("look"), {
    key: ({ key = "" }) => pressKey(key),
    pick: () => goOn(laid(now, pick(now.session, ALL))),
  });
  listen(at("[data-row]"), { pick: ({ at: place = "" }) => pickAt(place) });
  listenSet(screenOf("set"), {
    toggle: (id) => step(withMember(now.session, id, now.guide)),
    sold: () => step(addMembers(now.session, now.guide.members.usual, now.guide)),
    rename: (from, to) => step(rename(now.session, from, to, now.guide)),
  });
  startSeller(screenOf("seller"), () => now, draw);
  listen(screenOf("places"), {
    lose: ({ part = "" }) => step(session.lose(now.session, part, now.guide)),
    regain: ({ part = "" }) => step(session.regain(now.session, part)),
    retract: ({ clue = "" }) => step(session.retract(now.session, clue)),
  });
  screenOf("places").addEventListener("click", (event) => {
    const clue = clueAt(event, now.guide, now.session);
    if (clue) location.hash = toClue(clue.id);
  });
  listen(screenOf("verdict"), {
    copy: () => void copyStory(screenOf("verdict"), now),
    "go-on": goOnWith,
  });
  listen(at("[data-bar]"), {
    undo: () => step(session.undo(now.session), route(location.hash).screen === "look"),
  });
  listenChanges(at("main"), {
    away: (_, on) => step(session.away(now.session, on)),
    photos: (_, on) => step(session.photos(now.session, on)),
    without: (_, on, { tool = "" }) => step(lacking(now.session, tool, on)),
    claim: (year) => step(claimed(now.session, year)),
    cite: (clue, on) => step(cited(now.session, clue, on)),
  });
  window.addEventListener("hashchange", ({ oldURL }) => {
    remindOf(new URL(oldURL).hash);
    draw(true);
  });
}

/** What the screens of the later scripts ask for. */
const APP = {
  cards,
  desk: () => now,
  asked: () => now && asked(now, route(location.hash)),
  opened,
  open,
  take,
  changed,
  onVerdict: (/** @type {(typeof verdictListeners)[number]} */ listener) => {
    verdictListeners.push(listener);
    if (now && route(location.hash).screen === "verdict") draw();
  },
  redraw: () => draw(),
  say,
  failed,
};

/** Brings in the later scripts, in the order in which they are wanted. */
async function startLater() {
  const [kept] = await Promise.all([import("./kept.js"), furnish()]);
  Object.assign(laters, kept.start(APP));
  const dealing = await import("./dealing.js");
  Object.assign(laters, dealing.start(APP));
  return kept.hasGuests();
}

/** That the script of a screen is there: what few need waits until it is asked for. @param {string} screen @returns {Promise<unknown>} */
function arrived(screen) {
  if (!(screen in RARE)) return last;
  const coming = rare.get(screen) ?? startRare(screen);
  rare.set(screen, coming);
  return coming;
}

/** @param {string} screen */
async function startRare(screen) {
  const [asking, name] = RARE[screen];
  await last;
  const script = await asking().catch(() => {
    // With signal again the next attempt may do.
    rare.delete(screen);
    if (route(location.hash).screen === screen) location.hash = "#home";
    throw new ShelfError(`${name} not on this phone yet. Try again when there is signal.`);
  });
  Object.assign(laters, script.start(APP));
}

/**
 * A guide has come, is another now, or with no card is gone: what lies open with it is
 * taken up anew.
 * @param {string} id @param {import("./shelf.js").Card | null} card
 */
async function changed(id, card) {
  desks.delete(id);
  if (now?.guide.id === id) now = null;
  const at = cards.findIndex((each) => each.id === id);
  cards.splice(at < 0 ? cards.length : at, at < 0 ? 0 : 1, ...(card ? [card] : []));
  if (card) await takeUp([id]);
  draw();
}

/** Takes up what lies open with these guides. @param {string[]} guides */
async function takeUp(guides) {
  for (const { shelved, session: kept, lost } of await taken(guides, failed)) {
    await breath();
    const desk = await paced(laying(shelved, kept));
    // Whoever was quick has begun anew meanwhile, and that counts.
    if (desks.has(shelved.guide.id)) continue;
    desks.set(shelved.guide.id, desk);
    lost.forEach(say);
  }
  // Drawing comes next, and takes long by itself.
  await breath();
  now ??= desks.get(lastOpen() ?? "") ?? null;
}

/** Lays a find open anew, as it was kept. @param {import("./engine/find.js").Find} find */
async function open(find) {
  use(laid(await opened(find.guide), session.reopened(find)));
  rememberLast(find.guide);
  keep(now).catch(failed);
  location.hash = "#verdict";
}

/** Keeps the find that lies open, if one does. */
export const keepOpen = async () => now && keep(now);

/** Takes up what was kept, and listens from then on. */
export async function start() {
  const { wanted } = document.documentElement.dataset;
  listenAll();
  followFrame();
  last = startLater();
  last.then((guests) => (guests ? arrived("guests") : undefined)).catch(failed);
  draw();
  const guests = await guestIds();
  await takeUp(cards.map(({ id }) => id).filter((id) => !guests.includes(id)));
  delete document.documentElement.dataset.coming;
  // Whoever tapped before all this was there is not asked to tap again.
  if (wanted) return look(wanted, false);
  draw();
}
