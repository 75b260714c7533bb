/** The page's address as a screen, pure: #home, #look, #look/<clue>/<member>, #rest, ... */

/** The screens of a find, which cannot be shown without one. */
const OF_A_FIND = ["look", "places", "verdict", "set", "claim", "seller", "offer", "sizing"];
/** The screens of the later scripts. */
const LATER = ["finds", "entry", "wants", "offer", "sizing", "check", "practice", "guests"];
const SCREENS = [...new Set(["home", ...OF_A_FIND, ...LATER])];

/** The screens of a question. */
const ASKING = ["look", "sizing"];
/** The screens of one thing that their address names. */
const OF_ONE = ["entry", "practice"];
const REST = "rest";
/** The address of Looking at what would hardly tell anything. */
export const TO_REST = `#${REST}`;
const NOWHERE = { clue: null, member: null, id: null, rest: false };

/** In place of a member: which of them has yet to be said. */
export const WHICH = "?";

/**
 * @typedef {object} Route
 * @property {string} screen
 * @property {string | null} clue
 * @property {string | null} member of the set; or `WHICH`
 * @property {string | null} id of an entry of the log, or of the guide to practise with
 * @property {boolean} rest whether to ask even what would hardly tell anything
 */

/**
 * The screen that an address names, with the clue and the member if it names them; Home
 * for any other.
 * @param {string} hash
 * @returns {Route}
 */
export function route(hash) {
  const [name, ...more] = hash.replace(/^#/, "").split("/").map(read);
  const rest = name === REST;
  const screen = rest ? "look" : name;
  if (!SCREENS.includes(screen)) return { ...NOWHERE, screen: "home" };
  const [first = null, second = null] = more;
  if (ASKING.includes(screen)) return { ...NOWHERE, screen, clue: first, member: second, rest };
  return { ...NOWHERE, screen, member: screen === "verdict" ? first : null, id: OF_ONE.includes(screen) ? first : null };
}

/**
 * Whether a screen shows a find, and so cannot be shown without one.
 * @param {string} screen
 */
export function needsFind(screen) {
  return OF_A_FIND.includes(screen);
}

/** Whether a screen is one of the later scripts. @param {string} screen */
export const isLater = (screen) => LATER.includes(screen);

/** The address of an entry of the log. @param {string} id */
export const toEntry = (id) => `#entry/${id}`;

/**
 * Where a guide's questions begin: marks are looked for in any order, since hardly an
 * object has many of them.
 * @param {{verdict: "year" | "range"}} guide
 */
export const toStart = ({ verdict }) => (verdict === "range" ? "#places" : "#look");

/** The address of a clue's question, of one member where it is named. @param {string} clue @param {string | null} [member] */
export const toClue = (clue, member = null) => toAsking("look", clue, member);

/** The address where a measure is taken off a photo. @param {string} clue @param {string | null} [member] */
export const toSizing = (clue, member = null) => toAsking("sizing", clue, member);

/** @param {string} screen @param {string} clue @param {string | null} member */
function toAsking(screen, clue, member) {
  const place = member === null ? "" : `/${encodeURIComponent(member)}`;
  return `#${screen}/${clue}${place}`;
}

/** The address of a member's own verdict. @param {string} member */
export function toMember(member) {
  return `#verdict/${encodeURIComponent(member)}`;
}

/** The page of a guide that needs no scripts, where it tells of a clue. @param {string} guide @param {string} clue */
export const toLesson = (guide, clue) => `guide-${guide}.html#clue-${clue}`;

/** A piece of an address; one that nobody wrote this way is left as it is. @param {string} piece */
function read(piece) {
  try {
    return decodeURIComponent(piece);
  } catch {
    return piece;
  }
}
