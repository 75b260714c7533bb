/**
 * One value of unknown kind taken as what it should be, or a sentence that says what is
 * wrong with it. Pure.
 */

export const MOST_TEXT = 2000;
export const MOST_SHORT = 200;
/** Of a value that is refused, so much is shown. */
const SHOWN = 40;
const DEAREST = 1e12;
const ID = /^[a-z0-9]+(-[a-z0-9]+)*$/;
const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;
const DAY = /^\d{4}-\d\d-\d\d$/;
const TIME = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,3})?Z$/;
const CURRENCY = /^[A-Z]{3}$/;
/** Half of a character: a file could not hold it. */
const HALF = /\p{Surrogate}/gu;

/** What cannot be taken into the log; the message is a sentence to show. */
export class RecordError extends Error {
  name = "RecordError";
}

/**
 * Says what is wrong with a value.
 * @param {unknown} value
 * @param {string} what
 * @param {string} wanted
 * @returns {never}
 */
export function refuse(value, what, wanted) {
  throw new RecordError(`The ${what} cannot be ${shown(value)}: ${wanted}.`);
}

/**
 * A reader of a table's own fields, so that nothing inherited is ever read.
 * @param {unknown} json
 * @param {string} what
 * @returns {(key: string) => unknown}
 */
export function table(json, what) {
  if (typeof json !== "object" || json === null || Array.isArray(json))
    refuse(json, what, "a table is needed");
  const fields = /** @type {Record<string, unknown>} */ (json);
  return (key) => (Object.hasOwn(fields, key) ? fields[key] : undefined);
}

/**
 * @template T
 * @param {unknown} json
 * @param {string} what
 * @param {(each: unknown, what: string) => T} one
 * @param {number} most
 * @returns {T[]}
 */
export function list(json, what, one, most) {
  if (!Array.isArray(json)) refuse(json, what, "a list is needed");
  if (json.length > most)
    throw new RecordError(`There are ${json.length} ${what}; at most ${most} are taken.`);
  return json.map((each) => one(each, what));
}

/** @param {readonly unknown[]} ids @param {string} what */
export function assertApart(ids, what) {
  const twice = ids.find((id, i) => ids.indexOf(id) < i);
  if (twice !== undefined) refuse(twice, what, "it is there twice");
}

/**
 * The value, or null where there is none.
 * @template T
 * @param {(value: unknown, what: string) => T} one
 * @returns {(value: unknown, what: string) => T | null}
 */
export const maybe = (one) => (value, what) =>
  (value ?? null) === null ? null : one(value, what);

/** @param {unknown} value @param {string} what */
export const text = (value, what) => string(value, what, MOST_TEXT);

/** @param {unknown} value @param {string} what */
export const short = (value, what) => string(value, what, MOST_SHORT);

/** @param {unknown} value @param {string} what */
export function id(value, what) {
  const found = short(value, what);
  if (!ID.test(found)) refuse(value, what, "small letters, digits and single hyphens are needed");
  return found;
}

/** @param {unknown} value @param {string} what */
export function uuid(value, what) {
  const found = short(value, what).toLowerCase();
  if (!UUID.test(found)) refuse(value, what, "a UUID is needed");
  return found;
}

/** A day of the calendar, or empty. @param {unknown} value @param {string} what */
export function day(value, what) {
  const found = short(value, what);
  const real = DAY.test(found) && time(`${found}T00:00:00Z`, what).startsWith(found);
  if (found && !real) refuse(value, what, 'a day is needed, as "2026-11-25"');
  return found;
}

/** A moment in the one form that sorts as text. @param {unknown} value @param {string} what */
export function time(value, what) {
  const found = short(value, what);
  const moment = new Date(found);
  if (!TIME.test(found) || Number.isNaN(moment.getTime()))
    refuse(value, what, 'a time is needed, as "2026-11-25T10:00:00Z"');
  return moment.toISOString();
}

/** @param {unknown} value @param {string} what */
export function currency(value, what) {
  const found = short(value, what);
  if (found && !CURRENCY.test(found))
    refuse(value, what, 'three capital letters are needed, as "EUR"');
  return found;
}

/** @param {unknown} value @param {string} what */
export const price = (value, what) => number(value, what, 0, DEAREST);

/** @param {unknown} value @param {string} what */
export const share = (value, what) => number(value, what, 0, 1);

/** @param {unknown} value @param {string} what */
export function whole(value, what, least = -DEAREST, most = DEAREST) {
  const found = number(value, what, least, most);
  if (!Number.isInteger(found)) refuse(value, what, "a whole number is needed");
  return found;
}

/** @param {unknown} value @param {string} what */
export function number(value, what, least = -Infinity, most = Infinity) {
  if (typeof value !== "number" || !Number.isFinite(value))
    refuse(value, what, "a number is needed");
  const bounds = most === Infinity ? `from ${least}` : `from ${least} to ${most}`;
  if (value < least || most < value) refuse(value, what, `a number ${bounds} is needed`);
  return value;
}

/** @param {unknown} value @param {string} what @param {number} most */
function string(value, what, most) {
  const found = value === undefined ? "" : value;
  if (typeof found !== "string") refuse(value, what, "a text is needed");
  if (found.length > most)
    throw new RecordError(
      `The ${what} has ${found.length} characters; at most ${most} are taken.`,
    );
  return found.replace(HALF, "\uFFFD");
}

/** A value as a person can read it, however large it is. @param {unknown} value */
function shown(value) {
  if (value === undefined) return "missing";
  if (value === null) return "empty";
  if (Array.isArray(value)) return value.length ? "a list" : "an empty list";
  if (typeof value === "object") return "a table";
  const said = typeof value === "string" ? `"${value}"` : String(value);
  return said.length > SHOWN ? `${said.slice(0, SHOWN)}…` : said;
}
