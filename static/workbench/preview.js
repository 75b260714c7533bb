/**
 * Looks again at what an edit would do while one types: the form is sent as its button
 * "Preview" sends it, and only the preview is taken from the page that comes back.
 */

const PAUSE = 700;
const WAITING = "previewed--waiting";

/**
 * Calls `act` once typing has paused, and again only after the last call has ended.
 * @param {() => Promise<void>} act
 * @param {number} pause
 */
export function afterPauses(act, pause) {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let waiting;
  let busy = false;
  let again = false;
  const run = async () => {
    if (busy) {
      again = true;
      return;
    }
    busy = true;
    try {
      await act();
    } finally {
      busy = false;
      if (again) {
        again = false;
        await run();
      }
    }
  };
  return () => {
    clearTimeout(waiting);
    waiting = setTimeout(run, pause);
  };
}

/**
 * The page that a form leads to. A document that a request brings runs no scripts.
 * @param {HTMLFormElement} form
 * @returns {Promise<Document | null>}
 */
function fetched(form) {
  const data = new FormData(form);
  data.set("do", "preview");
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    request.open("POST", location.href);
    request.responseType = "document";
    request.onload = () => resolve(request.responseXML);
    request.onerror = () => resolve(null);
    request.send(data);
  });
}

/** @param {Element} shown @param {Element} fresh */
const put = (shown, fresh) =>
  shown.replaceChildren(...[...fresh.childNodes].map((node) => document.importNode(node, true)));

/**
 * Puts the picture in as it is drawn now, and the fields of another shape; while the shape
 * is the same its fields are left alone, for somebody types in them.
 * @param {HTMLFormElement} form @param {Document} page
 */
function pictures(form, page) {
  for (const shown of form.querySelectorAll("[data-drawn], [data-particulars]")) {
    const fresh = page.getElementById(shown.id);
    const shape = fresh?.getAttribute("data-particulars");
    if (!fresh || (shown.hasAttribute("data-particulars") && shown.getAttribute("data-particulars") === shape)) continue;
    put(shown, fresh);
    if (shape) shown.setAttribute("data-particulars", shape);
  }
}

/** @param {HTMLFormElement} form @param {HTMLElement} shown */
async function look(form, shown) {
  shown.classList.add(WAITING);
  const page = await fetched(form);
  const fresh = page?.querySelector("[data-preview]");
  // Without one it was no page of ours: the session ended, or the server did.
  if (page && fresh) {
    put(shown, fresh);
    pictures(form, page);
  }
  shown.classList.remove(WAITING);
}

if (typeof document !== "undefined") {
  const form = document.querySelector("form[data-preview-form]");
  const shown = document.querySelector("[data-preview]");
  if (form instanceof HTMLFormElement && shown instanceof HTMLElement) {
    form.addEventListener("input", afterPauses(() => look(form, shown), PAUSE));
  }
}
