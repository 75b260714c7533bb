/** The list of finds: what is searched and in which order, and what is said around it. */

import { book } from "../log/book.js";
import { lasts, room } from "../log/lasting.js";
import { search, sort } from "../log/search.js";
import { isLater, route } from "../routes.js";
import { keepingFocus, listen, listenChanges, screenOf } from "../view/dom.js";
import * as view from "../view/finds.js";
import { pictureIn, row } from "../view/findsrow.js";
import { guidesOf } from "./guides.js";
import { startIncoming } from "./incoming.js";
import { startKeep } from "./keep.js";
import { startMissed } from "./missed.js";
import { startOpenKept } from "./openkept.js";
import { startOutgoing } from "./outgoing.js";
import { saidNow } from "./said.js";
import { attempt, sentence } from "./sentence.js";
import { thumbs } from "./thumbs.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../log/record.js").Entry} Entry */
/** @typedef {import("../log/search.js").Order} Order */

/** What the list is asked for; it stays as long as the page does. */
const asked = { typed: "", order: /** @type {Order} */ ("date"), most: view.MANY };
/** The row of an entry, as long as the entry is the same. @type {WeakMap<Entry, HTMLElement>} */
const rows = new WeakMap();
/** @type {(entry: Entry) => HTMLElement} */
let rowOf;

/** @param {HTMLElement} root @param {App} app */
export function startFinds(root, app) {
  rowOf = rowsWith(app);
  startKeep(app);
  startMissed(app);
  startOpenKept(app);
  startOutgoing(root, app);
  startIncoming(root, app);
  root.addEventListener("input", ({ target }) => {
    if (!(target instanceof HTMLInputElement) || target.type !== "search") return;
    ask({ typed: target.value, most: view.MANY });
    app.redraw();
  });
  listenChanges(root, {
    order: (order) => {
      ask({ order: /** @type {Order} */ (order) });
      app.redraw();
    },
  });
  listen(root, {
    more: () => {
      ask({ most: asked.most + view.MANY });
      app.redraw();
    },
    dismiss: () => void book.dismiss().then(app.redraw, app.failed),
  });
  startHome(app);
}

/** @param {Partial<typeof asked>} changes */
const ask = (changes) => void Object.assign(asked, changes);

/** How many finds there are, on Home; and news from other pages. @param {App} app */
function startHome(app) {
  const screen = () => route(location.hash).screen;
  const drawHome = () =>
    counted().then((say) => view.drawCount(screenOf("home"), say), app.failed);
  window.addEventListener("hashchange", () => screen() === "home" && drawHome());
  book.onOthers(() => {
    drawHome();
    if (isLater(screen())) app.redraw();
  });
  drawHome();
}

async function counted() {
  try {
    const { length } = (await book.list()).entries;
    return length ? `${length} kept` : "none kept yet";
  } catch (error) {
    // The whole sentence is said where the finds would be.
    return sentence(error) && "not to be read right now";
  }
}

/**
 * @param {HTMLElement} root
 * @param {import("../routes.js").Route} _
 * @param {App} app
 */
export function drawFinds(root, _, app) {
  if (!root.firstElementChild) root.append(view.findsFrame());
  view.sayIn(root, saidNow());
  attempt(() => fill(root, app), (why) => view.sayIn(root, why), app.failed);
}

/** @param {HTMLElement} root @param {App} app */
async function fill(root, app) {
  const { entries, refused } = await book.list();
  const { titled } = guidesOf(app);
  const found = sort(search(entries, asked.typed, titled), asked.order, titled);
  const drawn = found.slice(0, asked.most).map(rowOf);
  const list = { rows: drawn, found: found.length, all: entries.length, refused };
  keepingFocus(root, () => view.fillFinds(root, list));
  const { state, say } = await lasts();
  view.fillReminder(root, await book.reminder(state === "lasting"));
  view.fillRoom(root, [cameBack(), say, await room()]);
}

/** What the second copy has brought back, and whether there is one. */
function cameBack() {
  const { restored, trouble } = book.copies();
  const many = restored === 1 ? "One find" : `${restored} finds`;
  const back = `${many} that the browser had lost came back from the second copy.`;
  return [restored ? back : "", trouble].filter(Boolean).join(" ");
}

/** What gives the row of an entry. @param {App} app */
function rowsWith(app) {
  const picture = thumbs(app.failed);
  return (/** @type {Entry} */ entry) => {
    const known = rows.get(entry) ?? row(entry, guidesOf(app));
    const place = rows.has(entry) ? null : pictureIn(known);
    if (place) picture(place, entry);
    rows.set(entry, known);
    return known;
  };
}
