/** The page's address as a screen, pure: #home, #look, #look/<clue>, #places, ... */

const SCREENS = ["home", "look", "places", "verdict", "check"];
const OF_A_FIND = ["look", "places", "verdict"];

/**
 * The screen that an address names, and the clue if it names one; Home for any other.
 * @param {string} hash
 * @returns {{screen: string, clue: string | null}}
 */
export function route(hash) {
  const [screen, clue = null] = hash.replace(/^#/, "").split("/");
  if (!SCREENS.includes(screen)) return { screen: "home", clue: null };
  return { screen, clue: screen === "look" ? clue : null };
}

/**
 * Whether a screen shows a find, and so cannot be shown without one.
 * @param {string} screen
 */
export function needsFind(screen) {
  return OF_A_FIND.includes(screen);
}

/** The address of a clue's question. @param {string} clue */
export function toClue(clue) {
  return `#look/${clue}`;
}
