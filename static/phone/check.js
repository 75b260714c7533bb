// "Check this phone": the engine's verdicts beside the ones worked out when it was
// made. Numbers agree to 1e-9; words, order and everything else must be the same.

/** @typedef {import("./engine/find.js").Find} Find */
/** @typedef {import("./engine/find.js").Verdict} Verdict */
/**
 * @typedef {{find: Find, away: boolean, without: string[], photos: boolean,
 *   verdict: Verdict}} Case
 */
/** @typedef {{guide: any, cases: Case[]}} Vector A packed guide and finds under it. */
/**
 * @typedef {Pick<typeof import("./engine/index.js"), "prepare" | "judge" | "unpack">}
 * Engine
 */
/**
 * @typedef {object} Report
 * @property {number} agree
 * @property {number} total
 * @property {number} worst
 * @property {string[]} failures
 */
/** @typedef {{where: string, wanted: unknown, got: unknown}} Pair */

const NEAR = 1e-9;

/**
 * How many cases agree, how far off the worst number is, and a line for each failure.
 * @param {readonly Vector[]} vectors @param {Engine} engine @returns {Report}
 */
export function run(vectors, engine) {
  const trials = vectors.flatMap((vector) => triedAll(vector, engine));
  const failures = trials.map(({ failure }) => failure).filter(Boolean);
  return {
    agree: trials.length - failures.length,
    total: trials.length,
    worst: Math.max(0, ...trials.map(({ worst }) => worst)),
    failures,
  };
}

/** @param {Vector} vector @param {Engine} engine */
function triedAll({ guide, cases }, { prepare, judge, unpack }) {
  /** @type {ReturnType<Engine["prepare"]>} */
  let tables;
  return cases.map(({ find, verdict, ...limits }) => {
    const name = named(find);
    try {
      tables ??= prepare(unpack(guide));
      return compared(name, verdict, judge(tables, find, limits));
    } catch (error) {
      // An engine that stops is a failure to report like any other.
      const { message } = /** @type {Error} */ (error);
      return { worst: 0, failure: `${name}: no verdict: ${message}` };
    }
  });
}

/** The guide and what was read, as it is told to a command. @param {Find} find */
function named({ guide, items }) {
  const told = items.map(({ member, readings, gone }) => [
    ...(member === null ? [] : [`member ${member}`]),
    ...readings.map(([clue, reading]) => `${clue}=${readingTold(reading)}`),
    ...gone.map((part) => `${part} gone`),
  ]);
  return [guide, ...told.flat()].join(" ");
}

/** @param {import("./engine/find.js").Reading} reading */
function readingTold(reading) {
  if (reading === null) return "?";
  return typeof reading === "object" ? `${reading.value} ± ${reading.error}` : reading;
}

/**
 * The farthest number, and the first thing that is not as it should be.
 * @param {string} name @param {Verdict} wanted @param {Verdict} got
 */
function compared(name, wanted, got) {
  const pairs = [...leaves(wanted, got, "")];
  // Written so that "not a number", which compares false with everything, is found.
  const wrong = pairs.find((pair) => !(off(pair) <= NEAR));
  return {
    worst: Math.max(0, ...pairs.map(off).filter(Number.isFinite)),
    failure: wrong ? `${name}: ${told(wrong)}` : "",
  };
}

/**
 * All that does not hold anything further, pair by pair, with its place.
 * @param {any} wanted @param {any} got @param {string} where
 * @returns {Generator<Pair>}
 */
function* leaves(wanted, got, where) {
  if (!holds(wanted) || !holds(got) || Array.isArray(wanted) !== Array.isArray(got)) {
    yield { where, wanted, got };
    return;
  }
  for (const key of Object.keys({ ...wanted, ...got })) {
    yield* leaves(wanted[key], got[key], where ? `${where}.${key}` : key);
  }
}

/** @param {unknown} value @returns {value is Record<string, any>} */
const holds = (value) => typeof value === "object" && value !== null;

/** @param {Pair} pair */
function told({ where, wanted, got }) {
  const [is, should] = [got, wanted].map((value) => JSON.stringify(value) ?? "missing");
  return `${where} is ${is}, not ${should}`;
}

/**
 * How far a pair is apart: numbers by their distance, of large ones the share that
 * differs; anything else is the same or infinitely far.
 * @param {Pair} pair
 */
function off({ wanted, got }) {
  if (typeof wanted === "number" && typeof got === "number") {
    return Math.abs(wanted - got) / Math.max(1, Math.abs(wanted));
  }
  return wanted === got ? 0 : Infinity;
}
