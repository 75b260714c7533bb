// Says of each packed guide, one a line, what the phone says of it, one a line: what is
// wrong with it, or else the verdict when nothing was read.

import { createInterface } from "node:readline";

import { judge, prepare } from "../../static/phone/engine/index.js";
import { problems } from "../../static/phone/guests/across.js";
import { DESCRIBED, LIMITS } from "../../static/phone/guests/described.js";
import { misfits } from "../../static/phone/guests/fit.js";
import { place } from "../../static/phone/guests/told.js";

for await (const line of createInterface({ input: process.stdin })) {
  const guide = JSON.parse(line);
  const shaped = [...misfits(guide, DESCRIBED)].slice(0, LIMITS.told);
  const all = shaped.length ? shaped : problems(guide).slice(0, LIMITS.told);
  const told = all.map(([path, code, wrong]) => [place(path), code, wrong]);
  console.log(JSON.stringify(told.length ? told : verdict(guide)));
}

/** How probable each year is when nothing was read, which sums to one with what is outside. */
function verdict(guide) {
  const find = { guide: guide.id, items: [{ member: null, readings: [], gone: [] }], claim: null };
  const { model_years, outside } = judge(prepare(guide), find);
  return model_years.reduce((sum, [, p]) => sum + p, outside);
}
