/** When to remind of an export. Pure. */

/** @typedef {Pick<import("./entry.js").Entry, "created" | "changed">} Times */

const DAY = 24 * 3600 * 1000;
/** So many finds in no file are reminded of at once. */
const MANY = 10;
/** Days without an export, where the browser keeps the log for good and where not. */
const DAYS = { lasting: 7, clearable: 3 };
/** So long a dismissed reminder stays away. */
const QUIET = DAY;

/**
 * The reminder, or nothing: only a finished export makes it go for good, and one without
 * any find to save is never given. Before the first export, days count from the first
 * find that is in no file.
 * @param {readonly Times[]} entries
 * @param {object} when
 * @param {string | null} when.exported when the log was last read for an export
 * @param {string | null} when.dismissed
 * @param {string} when.now
 * @param {boolean} when.lasts whether the browser keeps the log for good
 */
export function remind(entries, { now, lasts, ...times }) {
  // A clock that ran ahead once must not silence this until it is there again.
  const [exported, dismissed] = [times.exported, times.dismissed].map((time) =>
    time && time <= now ? time : null,
  );
  const unsaved = entries.filter(({ changed }) => !exported || changed >= exported);
  if (unsaved.length === 0) return "";
  if (dismissed && between(dismissed, now) < QUIET) return "";
  const first = unsaved.map(({ changed }) => changed).sort()[0];
  const patience = (lasts ? DAYS.lasting : DAYS.clearable) * DAY;
  const isLate = between(exported ?? first, now) >= patience;
  return isLate || unsaved.length >= MANY ? said(unsaved.length) : "";
}

/** Milliseconds. @param {string} since @param {string} until */
const between = (since, until) => Date.parse(until) - Date.parse(since);

/** @param {number} count */
const said = (count) =>
  `${count === 1 ? "1 find is" : `${count} finds are`} in no file yet. ` +
  "Make the file and keep it elsewhere, so that your finds outlive this phone.";
