/** How the list of a collection looks: a table, its head on every sheet of paper. Pure. */

import { GROUND, INK, PAPER } from "./reportstyle.js";

// One rule a line, so that the build may still drop the blanks of the script.
export const STYLE = [
  ...GROUND,
  "dl div { grid-template-columns: 7.5rem minmax(0, 1fr); }",
  ".finds { margin: 1.25rem 0 0; border-top: 2px solid var(--ink); }",
  ".finds th, .finds td { padding-block: 0.5rem; }",
  ".finds thead th { padding-block: 0.25rem; border-bottom: 2px solid var(--ink); }",
  ".finds th:nth-child(1) { width: 33%; }",
  ".finds th:nth-child(3) { width: 17%; }",
  ".finds th:nth-child(4) { width: 19%; }",
  ".finds tr > :last-child { text-align: end; }",
  ".finds .photo img { max-height: 7rem; }",
  ".soft { color: var(--soft); font-weight: 400; }",

  "@media screen and (max-width: 34rem) {",
  ".finds thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }",
  ".finds, .finds tbody { display: block; }",
  ".finds tr { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 0.25rem 0.75rem; padding: 0.75rem 0; border-bottom: 1px solid var(--rule); }",
  ".finds tbody th:nth-child(n), .finds td { width: auto; padding: 0; border: 0; }",
  ".finds tbody th { grid-column: 1 / -1; }",
  ".finds .photo img { max-width: 6.5rem; }",
  ".finds tr > :last-child { grid-column: 1 / -1; text-align: start; }",
  ".finds tr > :empty { display: none; }",
  "}",

  "@media (min-width: 38rem) {",
  ".report { padding: 2rem 2.5rem 4rem; }",
  "}",

  PAPER,
  "@media print {",
  ...INK,
  ".finds { margin: 10pt 0 0; }",
  ".finds .photo img { max-height: 26mm; }",
  "}",
].join("\n");
