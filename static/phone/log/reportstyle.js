/**
 * How a report looks, and whatever else is read by others: on any screen, and in black on
 * white paper of any size. It is light whatever the phone is set to. Pure.
 */

/** The margins of the paper, whatever size the printer has. */
export const PAPER = "@page { margin: 16mm 15mm; }";

// One rule a line, so that the build may still drop the blanks of the script.
/** What all pages share. */
export const GROUND = [
  "html { color-scheme: only light; }",
  "body { margin: 0; background: #f4ecd8; }",
  ":where(.report, .report *) { box-sizing: border-box; margin: 0; padding: 0; }",
  ".report { --ink: #1f1a14; --soft: #453b2e; --rule: #8b7b61; --faint: #ddd0b4; --accent: #56238a; --sheet: #fffdf6; }",
  ".report { max-width: 50rem; margin: 0 auto; padding: 1.5rem 1rem 3rem; background: var(--sheet); color: var(--ink); }",
  ".report { font: 1.0625rem/1.4 system-ui, 'Segoe UI', Roboto, 'Noto Sans', 'DejaVu Sans', sans-serif; }",
  ".report { font-variant-numeric: tabular-nums; overflow-wrap: anywhere; text-align: start; }",
  "h1, h2, .say { font-family: 'Iowan Old Style', Charter, 'Noto Serif', 'Liberation Serif', Georgia, serif; line-height: 1.15; text-wrap: balance; }",
  "h1 { font-size: 2rem; font-weight: 700; }",
  "h2 { font-size: 1.375rem; font-weight: 700; }",
  "header, section { display: grid; grid-template-columns: minmax(0, 1fr); gap: 0.75rem; }",
  "section { margin: 1.75rem 0 0; padding: 0.75rem 0 0; border-top: 2px solid var(--ink); }",
  "ul { list-style: none; }",
  ".invented { padding: 0.375rem 0.75rem; border: 2px dashed var(--ink); font-weight: 700; }",
  ".estimate { font-weight: 700; }",
  "dl { display: grid; gap: 0.25rem; }",
  "dl div { display: grid; grid-template-columns: 5.5rem minmax(0, 1fr); gap: 0.5rem; }",
  "dt, .axis, .origin p, thead th { color: var(--soft); }",
  "table { width: 100%; border-collapse: separate; border-spacing: 0; table-layout: fixed; line-height: 1.3; hyphens: auto; }",
  "th, td { padding: 0.3125rem 0.5rem 0.3125rem 0; border-bottom: 1px solid var(--rule); font-weight: 400; text-align: start; vertical-align: top; }",
  "th:last-child, td:last-child { padding-inline-end: 0; }",
  "tbody th { font-weight: 600; }",
  ".photo img { display: block; width: auto; max-width: 100%; height: auto; max-height: 28rem; border: 1px solid var(--rule); }",
  ".says li, .cited li, .strays li, .changes li, .unweighed li { padding: 0.125rem 0 0.125rem 1rem; text-indent: -1rem; }",
  ".says li::before, .cited li::before, .strays li::before, .changes li::before, .unweighed li::before { content: '\\2013\\00a0\\00a0'; }",
];

/** What they share on paper. */
export const INK = [
  "body { background: #fff; }",
  ".report { --ink: #000; --soft: #000; --rule: #000; --faint: #000; --accent: #000; --sheet: #fff; }",
  ".report { max-width: none; padding: 0; font-size: 10.5pt; }",
  "h1 { font-size: 20pt; }",
  "h2 { font-size: 14pt; break-after: avoid; }",
  "section { display: block; margin: 14pt 0 0; padding: 8pt 0 0; }",
  "section > * + * { margin: 6pt 0 0; }",
  "th, td { padding-block: 2pt; border-bottom-width: 0.5pt; }",
  "tr, li, figure, .say, .beside, .axis, dl, .invented, .estimate { break-inside: avoid; }",
  ".axis, .estimate { break-after: avoid; }",
  "thead { display: table-header-group; }",
  "p { orphans: 3; widows: 3; }",
];

export const STYLE = [
  ...GROUND,
  ".note { padding: 0 0 0 0.75rem; border-inline-start: 4px solid var(--faint); white-space: pre-wrap; }",

  ".say { font-size: 1.5rem; }",
  ".figure { display: block; color: var(--accent); font-size: 5rem; font-weight: 700; letter-spacing: -0.02em; line-height: 1; }",
  ".figure--range { font-size: 2.25rem; line-height: 1.2; }",
  ".figure--open { display: inline; color: inherit; font-size: inherit; letter-spacing: 0; }",
  ".beside { display: grid; grid-template-columns: minmax(0, 1fr); gap: 1rem; align-items: start; }",
  ".beside > div { display: grid; grid-template-columns: minmax(0, 1fr); gap: 0.75rem; }",
  "svg { display: block; overflow: visible; }",
  ".column { fill: var(--sheet); stroke: var(--ink); stroke-width: 1.5px; }",
  ".column--lead { fill: var(--accent); stroke: var(--accent); }",
  ".ground, .post { stroke: var(--ink); stroke-width: 2px; }",
  ".name { fill: var(--ink); font-size: 0.8125rem; text-anchor: middle; }",
  ".name--first { text-anchor: start; }",

  "td p + p, td .photo { margin: 0.375rem 0 0; }",
  ".years th:first-child { width: 58%; }",
  ".years td, .years th:last-child { text-align: end; }",
  ".states th:first-child, .clues th:first-child { width: 36%; }",
  ".members th:first-child { width: 31%; }",
  ".members th:last-child { width: 19%; }",

  ".axis { display: flex; justify-content: space-between; }",
  ".readings, .flags, .photos { display: grid; grid-template-columns: minmax(0, 1fr); gap: 1rem; }",
  ".reading { display: grid; grid-template-columns: minmax(0, 1fr); gap: 0.5rem; }",
  ".rail { stroke: var(--rule); stroke-width: 2px; }",
  ".for { fill: var(--accent); stroke: var(--accent); }",
  ".against { fill: var(--sheet); stroke: var(--ink); stroke-width: 2px; }",
  ".clues .photo img { max-width: min(100%, 18rem); }",
  "figcaption { padding: 0.25rem 0 0; color: var(--soft); }",
  ".flags li { padding: 0.5rem 0 0.5rem 0.75rem; border-inline-start: 4px solid var(--ink); }",
  ".ask { padding: 0.25rem 0 0; font-weight: 700; }",

  "@media (max-width: 24rem) {",
  ".members, .clues, .states { font-size: 0.9375rem; }",
  "}",
  "@media (min-width: 38rem) {",
  ".report { padding: 2rem 2.5rem 4rem; }",
  ".beside { grid-template-columns: minmax(0, 1fr) 15.5rem; gap: 2rem; }",
  ".reading:has(.photo) { grid-template-columns: minmax(0, 1fr) 15rem; gap: 0.5rem 1.5rem; }",
  ".reading .photo { grid-column: 2; }",
  ".photos { grid-template-columns: repeat(2, minmax(0, 1fr)); }",
  ".clues th:first-child { width: 30%; }",
  ".members th:first-child { width: 22%; }",
  "}",

  PAPER,
  "@media print {",
  ...INK,
  ".figure { font-size: 48pt; }",
  ".figure--range { font-size: 26pt; }",
  ".figure--open { font-size: inherit; }",
  ".readings, .flags { display: block; }",
  ".readings > li + li, .flags > li + li { margin: 9pt 0 0; }",
  ".photo img { max-height: 95mm; }",
  "}",
].join("\n");
