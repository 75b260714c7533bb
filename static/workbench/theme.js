/**
 * The theme of a page that follows the system until somebody chooses. What was chosen is
 * kept where the browser lets such a page keep anything; else it lasts as long as the page.
 * A classic script, so that a page never flashes in the other theme.
 */
(() => {
  const KEY = "fieldid-theme";
  const CHOICES = ["light", "dark"];
  const root = document.documentElement;
  const system = matchMedia("(prefers-color-scheme: dark)");

  // A browser may refuse storage, a page from a disk above all.
  function kept() {
    try {
      return localStorage.getItem(KEY) ?? "";
    } catch {
      return "";
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

  const { theme = "" } = root.dataset;
  const isDark = () => root.dataset.theme === "dark" || (root.dataset.theme === theme && system.matches);
  if (CHOICES.includes(kept())) root.dataset.theme = kept();

  document.addEventListener("DOMContentLoaded", () => {
    const box = document.querySelector("[data-theme-switch]");
    if (!(box instanceof HTMLInputElement)) return;
    const show = () => (box.checked = isDark());
    show();
    system.addEventListener("change", show);
    box.addEventListener("change", () => {
      root.dataset.theme = CHOICES[Number(box.checked)];
      keep(root.dataset.theme);
    });
  });
})();
