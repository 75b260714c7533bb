/** Work that lets the browser paint first. */

/** In ms, after which whoever taps would notice that the page is busy. */
const LONG = 4;
let rested = 0;

/** Lets the browser paint, and answer a tap, where work has gone on for long. */
export async function breath() {
  if (performance.now() - rested < LONG) return;
  await new Promise((go) => setTimeout(go));
  rested = performance.now();
}

/** Resolves when what was drawn until now is painted. */
export const painted = () => new Promise((go) => requestAnimationFrame(() => setTimeout(go)));
