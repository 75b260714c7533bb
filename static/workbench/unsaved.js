/** Asks before a page is left on which something was filled in and not saved. */

/**
 * All that a form says, so that two moments can be compared.
 * @param {HTMLFormElement} form
 */
export function said(form) {
  return JSON.stringify([...new FormData(form)].map(([name, value]) => [name, String(value)]));
}

/**
 * Watches a form; `sent` forgets it once it is sent.
 * @param {HTMLFormElement} form
 * @param {Window} page
 */
export function watch(form, page) {
  const before = said(form);
  let sent = false;
  form.addEventListener("submit", () => {
    sent = true;
  });
  page.addEventListener("beforeunload", (event) => {
    if (!sent && said(form) !== before) event.preventDefault();
  });
}

if (typeof document !== "undefined") {
  for (const form of document.querySelectorAll("form[data-unsaved]")) {
    watch(/** @type {HTMLFormElement} */ (form), window);
  }
}
