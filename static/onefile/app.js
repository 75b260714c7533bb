/**
 * The entry of the app in one file: Home, Looking and the verdict, from guides that lie
 * in the page. Nothing is fetched and nothing is kept.
 */

import { failed } from "../phone/failing.js";
import { start } from "../phone/finding.js";
import { startPage } from "../phone/page.js";
import { route } from "../phone/routes.js";
import { at, screenOf } from "../phone/view/dom.js";

/** Addresses of screens that only the app has lead Home. */
function stay() {
  if (!screenOf(route(location.hash).screen)) history.replaceState(null, "", "#home");
}

function begin() {
  at("[data-unscripted]").hidden = true;
  at("[data-scripted]").hidden = false;
  startPage();
  // Before the find listens too, so that it never sees such an address.
  window.addEventListener("hashchange", stay);
  stay();
  return start();
}

window.addEventListener("error", ({ error }) => error && failed(error));
window.addEventListener("unhandledrejection", ({ reason }) => failed(reason));
begin().catch(failed);
