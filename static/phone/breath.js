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

/**
 * What steps come to, with a breath between them.
 * @template T
 * @param {Generator<void, T, void>} steps
 */
export async function paced(steps) {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
    await breath();
  }
}

/** Resolves when what was drawn until now is painted. */
export const painted = () => new Promise((go) => requestAnimationFrame(() => setTimeout(go)));
