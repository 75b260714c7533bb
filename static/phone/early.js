/**
 * What must run before the page is painted: the theme that the user chose, so that a
 * dark page never flashes light, a sentence if the app's own files do not arrive, and
 * an ear for whoever starts before they have.
 * A classic script, because modules run late and fail together.
 */
(() => {
  const KEY = "fieldid-theme";

  // A browser may refuse storage; the choice then lasts until the page is closed.
  function kept() {
    try {
      return localStorage.getItem(KEY);
    } catch {
      return null;
    }
  }

  /** @param {string} theme */
  function keep(theme) {
    try {
      localStorage.setItem(KEY, theme);
    } catch {
      return;
    }
  }

  document.documentElement.dataset.theme = kept() === "dark" ? "dark" : "light";

  // Who comes back to a find does not see Home move away; waiting ends after a moment.
  const own = /^#(look|rest|places|verdict|set|claim|seller|offer|sizing)\b/;
  if (own.test(location.hash)) document.documentElement.dataset.coming = "";

  document.addEventListener("DOMContentLoaded", () => {
    const box = document.querySelector("[data-theme-switch]");
    if (!(box instanceof HTMLInputElement)) return;
    box.checked = document.documentElement.dataset.theme === "dark";
    box.addEventListener("change", () => {
      const theme = box.checked ? "dark" : "light";
      document.documentElement.dataset.theme = theme;
      keep(theme);
    });
  });

  document.addEventListener("click", ({ target }) => {
    const start = target instanceof Element ? target.closest("[data-act=start]") : null;
    const { dataset } = document.documentElement;
    if (start instanceof HTMLElement) dataset.wanted = start.dataset.guide;
  });

  function lost() {
    const banner = document.querySelector("[data-banner]");
    if (!(banner instanceof HTMLElement)) return;
    banner.textContent =
      "A part of the app did not arrive, so it cannot start. Your drafts are kept. " +
      "Load the page again when there is signal; “Questions on one page” works meanwhile.";
    banner.hidden = false;
    // What is spoilt on the phone nobody else may be there to mend.
    navigator.serviceWorker?.controller?.postMessage({ type: "mend" });
  }

  // A file that does not load raises an event on its own element, seen only on the way down;
  // half of one is no script.
  const missed = (/** @type {any} */ { target, error }) =>
    (target instanceof HTMLScriptElement || error instanceof SyntaxError) && lost();
  window.addEventListener("error", missed, true);
  window.addEventListener("fieldid-lost", lost);
})();
