/** Which screen is shown, and what every screen of a find has around it. */

import { needsFind } from "./routes.js";
import { drawClaimScreen } from "./view/claim.js";
import { drawClue, drawDone } from "./view/clue.js";
import { at, focusHeading, keepingFocus, screenOf } from "./view/dom.js";
import { drawBar } from "./view/frame.js";
import { dropFile } from "./view/keep.js";
import { drawRow } from "./view/members.js";
import { drawPlaces } from "./view/places.js";
import { drawRibbon, drawSay } from "./view/ribbon.js";
import { drawWhich } from "./view/scope.js";
import { drawSeller } from "./view/seller.js";
import { drawSet } from "./view/set.js";
import { drawVerdict } from "./view/verdict.js";

/** Where the focus goes when the key or button that had it is no more. */
const FALLBACK = "[data-act=key]:not(:disabled), [data-take], [data-heading]";

/** Where ribbon and bar would take more of the screen than this, they scroll away. */
const MOST_FRAME = 0.38;

/** @type {Record<string, (data: any) => string>} */
const TITLES = {
  home: () => "Which year is it?",
  look: ({ clue }) => clue?.ask ?? "That is all for now",
  places: () => "The whole object",
  verdict: ({ verdict }) => `Verdict: ${verdict.say}`,
  set: () => "The set",
  claim: () => "The seller says a year",
  seller: () => "Ask the seller",
  check: () => "Check this phone",
  finds: () => "Finds",
  entry: () => "A find",
  wants: () => "What I want",
  offer: () => "What to offer",
  sizing: ({ clue }) => clue?.ask ?? "Measure in a photo",
  practice: () => "Practice",
  guests: () => "Guides from files",
};

/** @type {Record<string, (root: HTMLElement, data: any) => void>} */
const DRAWN = {
  look: (root, data) => drawAsked(data)(root, data),
  places: drawPlaces,
  verdict: (root, data) => {
    dropFile(root);
    drawVerdict(root, data);
  },
  set: drawSet,
  claim: drawClaimScreen,
  seller: drawSeller,
  offer: drawLater,
  sizing: drawLater,
};

/** A screen of a later script draws itself. @param {HTMLElement} _ @param {any} data */
function drawLater(_, data) {
  data.draw();
}

/** What stands on Looking: a question, who differs, or that all was asked. @param {any} data */
function drawAsked({ clue, places }) {
  if (!clue) return drawDone;
  return places.length ? drawClue : drawWhich;
}

/**
 * Shows a screen; those of a find are drawn from its data.
 * @param {string} screen
 * @param {any} data
 * @param {boolean} arriving whether to begin at its top, else where the user was
 */
export function drawScreen(screen, data, arriving) {
  for (const each of document.querySelectorAll("[data-screen]")) {
    /** @type {HTMLElement} */ (each).hidden = each !== screenOf(screen);
  }
  for (const frame of ["top", "lead", "bar"]) {
    at(`[data-${frame}]`).hidden = !needsFind(screen);
  }
  document.body.dataset.showing = screen;
  document.title = `${TITLES[screen](data)} · fieldid`;
  if (needsFind(screen)) drawFind(screen, data, arriving);
  else data.draw?.();
  if (arriving) arrive(screen);
}

/**
 * Leaves as much room as the sentences over the page cover, and at its end as the bar
 * does, and lets a crowded frame scroll away. Asked while a screen is drawn, how high they
 * are would have the page laid out then.
 */
export function followFrame() {
  const [banner, lead, bar] = [at("[data-banner]"), at("[data-lead]"), at("[data-bar]")];
  const { documentElement, body } = document;
  const follow = () => {
    const high = bar.offsetHeight;
    documentElement.style.setProperty("--told", `${banner.offsetHeight}px`);
    for (const { style } of [documentElement, body]) style.setProperty("--covered", `${high}px`);
    body.classList.toggle("crowded", lead.offsetHeight + high > MOST_FRAME * window.innerHeight);
  };
  const watching = new ResizeObserver(follow);
  for (const each of [banner, lead, bar]) watching.observe(each);
  window.addEventListener("resize", follow);
}

/** @param {string} screen @param {any} data @param {boolean} arriving */
function drawFind(screen, data, arriving) {
  const root = screenOf(screen);
  if (arriving) {
    // Whoever arrives has the focus on the heading anyway. When what has the focus is taken
    // away a browser works out all styles, and there are fewest before anything is drawn.
    const held = document.activeElement;
    if (held instanceof HTMLElement && root.contains(held)) held.blur();
    DRAWN[screen](root, data);
  } else {
    keepingFocus(root, () => DRAWN[screen](root, data), FALLBACK);
  }
  const name = at("[data-guide-name]");
  if (name.textContent !== data.guide.title) name.textContent = data.guide.title;
  at("[data-invented]").hidden = !data.guide.fiction;
  drawRibbon(at("[data-ribbon]"), data.verdict);
  drawSay(at("[data-status]"), data.verdict);
  const row = at("[data-row]");
  keepingFocus(row, () => drawRow(row, { screen, ...data }), "[aria-pressed=true]");
  keepingFocus(at("[data-bar]"), () => drawBar(at("[data-bar]"), { screen, ...data }));
}

/** Brings the screen's top into view and its heading into focus. @param {string} screen */
function arrive(screen) {
  const top = at("[data-top]");
  // The ribbon sticks, so its own place says nothing: it begins where the top ends.
  window.scrollTo(0, needsFind(screen) ? top.offsetTop + top.offsetHeight : 0);
  focusHeading(screenOf(screen));
  // Who has typed something must see how to hand it in.
  document.querySelector(".question--typed [data-take]")?.scrollIntoView({ block: "nearest" });
}
