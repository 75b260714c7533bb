/** Wants held against each verdict that is shown. */

import { several } from "../engine/members.js";
import { capital } from "../engine/words.js";
import { dealOf } from "../kept/dealt.js";
import { attempt } from "../kept/sentence.js";
import { loadWants } from "../log/wantsbook.js";
import { listen, screenOf, slot } from "../view/dom.js";
import { limitSay, matchSay, matchTitle, scarceSay, wantSay } from "../view/wantssay.js";
import { drawLacking, drawMatches, fillLimits } from "../view/wantsverdict.js";
import { matches } from "./wantsmatch.js";
import { unwanted } from "./wantsmissing.js";
import { wantMissing } from "./wantslacking.js";

/** @typedef {import("../desk.js").Desk} Desk */
/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../log/wants.js").Want} Want */

const NOW_WANTED = "among your wants now.";

/** What was kept when it was read last: shown at once, and read anew behind it. @type {readonly Want[]} */
let known = [];

/** @param {App} app */
export function startOnVerdict(app) {
  /** @param {() => Promise<void>} work */
  const doing = (work) => void attempt(work, app.say, app.failed);
  app.onVerdict((root, desk) => {
    let found = draw(root, desk, app);
    const place = slot(root, "wanted");
    doing(async () => {
      const isNews = await refresh();
      // Another verdict may have been drawn meanwhile.
      if (isNews && place.isConnected) found = draw(root, desk, app);
      const dealt = await dealOf(desk);
      if (place.isConnected) fillLimits(place, found.map(({ want }) => limitSay(want, dealt)));
    });
  });
  const verdict = screenOf("verdict");
  listen(verdict, { "want-missing": () => doing(() => add(verdict, app)) });
}

/** Reads the wants; whether they are others than before. */
async function refresh() {
  const before = JSON.stringify(known);
  known = (await loadWants()).wants;
  return JSON.stringify(known) !== before;
}

/** What the find may be, as it is shown. @param {HTMLElement} root @param {Desk} desk @param {App} app */
function draw(root, desk, { cards }) {
  const { guide, verdict } = desk;
  const card = cards.find(({ id }) => id === guide.id) ?? { title: guide.title, anything: false };
  const found = matches(desk, known);
  const told = found.map((match) => ({
    say: wantSay(match.want, card, guide),
    is: matchSay(match),
    scarce: scarceSay(match),
    note: match.want.note,
  }));
  drawMatches(slot(root, "wanted"), found.length ? matchTitle(found) : "", told);
  drawLacking(root, { count: unwanted(verdict, known).length, said: "" });
  return found;
}

/** @param {HTMLElement} root @param {App} app */
async function add(root, app) {
  const desk = app.desk();
  if (!desk) return;
  const added = await wantMissing(desk.verdict);
  await refresh();
  const verb = added.length === 1 ? "is" : "are";
  const said = added.length
    ? `${capital(several(desk.guide, added))} ${verb} ${NOW_WANTED}`
    : "They are among your wants already.";
  drawLacking(root, { count: 0, said });
  slot(root, "to-wants").focus();
}
