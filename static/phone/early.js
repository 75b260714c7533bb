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
  }

  // A file that does not load raises an event on its own element, seen only on the way down.
  const missed = (/** @type {Event} */ { target }) => target instanceof HTMLScriptElement && lost();
  window.addEventListener("error", missed, true);
  window.addEventListener("fieldid-lost", lost);
})();
