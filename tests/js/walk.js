// A random walk through the events of a session, for tests of what always holds.

import * as members from "../../static/phone/members.js";
import * as events from "../../static/phone/session.js";
import { small } from "./small-guide.js";

const { answer, claim, lose, regain, retract } = events;
const MEMBERS = [["3"], ["6"], ["5", "7"], ["3", "4", "5", "6", "7"]];

export const fresh = () => events.begin(small.id);
export const clue = (wanted) => small.clues.find(({ id }) => id === wanted);

/** Sessions of a random walk, seeded; every one differs from the one before. */
export function* wander(seed, steps) {
  const random = dice(seed);
  const pick = (list) => list[Math.floor(random() * list.length)];
  const taps = [
    (s) => answer(s, clue("rings"), pick(["green", "navy", null])),
    (s) => answer(s, clue("pad"), pick([3, 6.25, 12, null])),
    (s) => answer(s, clue("code"), pick(["A17", "?52", "???", null])),
    (s) => answer(s, clue("serial"), pick([120, 417, 31999, null])),
    (s) => answer(s, clue("diamond"), pick(["X04", "?4H", "1951", null])),
    (s) => retract(s, pick(["rings", "pad", "code", "serial", "diamond"])),
    (s) => lose(s, pick(["collar", "grip"]), small),
    (s) => regain(s, pick(["collar", "grip"])),
    (s) => members.addMembers(s, pick(MEMBERS), small),
    (s) => members.removeMember(s, pick(MEMBERS)[0], small),
    (s) => members.pick(s, pick(["all", s.items.length - 1])),
    (s) => events.photos(s, pick([true, false])),
    (s) => claim(s, pick([null, { model_year: 1951, cites: ["pad"] }])),
    (s) => events.away(s, pick([true, false])),
    (s) => events.without(s, pick([[], ["callipers"]])),
  ];
  let session = fresh();
  yield session;
  for (let i = 0; i < steps; i += 1) {
    const next = pick(taps)(session);
    if (next !== session) yield (session = next);
  }
}

/** Numbers from 0 to 1 that a seed decides (a linear congruence, Park and Miller). */
export function dice(seed) {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
