/** Leads from a mistake to its line in the text. */

/**
 * Where a line of a text starts and ends; lines count from one.
 * @param {string} text
 * @param {number} line
 * @returns {[number, number]}
 */
export function stretch(text, line) {
  const lines = text.split("\n");
  const before = lines.slice(0, line - 1).join("\n");
  const start = line > 1 ? before.length + 1 : 0;
  return [start, start + (lines[line - 1] ?? "").length];
}

/** @param {HTMLTextAreaElement} area @param {number} line */
function show(area, line) {
  const [start, end] = stretch(area.value, line);
  area.focus();
  area.setSelectionRange(start, end);
  const lines = area.value.split("\n").length;
  area.scrollTop = Math.max(0, (area.scrollHeight * (line - 3)) / lines);
}

if (typeof document !== "undefined") {
  const area = document.getElementById("text");
  document.addEventListener("click", (event) => {
    const link = event.target instanceof Element ? event.target.closest("[data-line]") : null;
    if (!link || !(area instanceof HTMLTextAreaElement)) return;
    event.preventDefault();
    show(area, Number(link.getAttribute("data-line")));
  });
}
