/**
 * The arithmetic and its words: a guide and a find in, a verdict out.
 *
 * No page, clock, randomness or storage. One short name for each idea, the same in
 * the Python twin and on the model page: `y` model year, `t` build month, `p` and `q`
 * parts (or a probability where no part is meant), `k` clue, `o` option, `a` reading,
 * `m` misreading, `w` weight. A name that begins with _ is for its own module.
 */

export { unpack } from "./guide.js";
export { judge, judging } from "./judge.js";
export { ended, prepare, preparing } from "./prepare.js";
export { message } from "./seller.js";
