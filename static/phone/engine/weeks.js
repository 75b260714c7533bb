/**
 * Days and weeks of the calendar, counted the same way in both languages. A leaf.
 *
 * Model page: "code", for fields that tell a week or a day.
 */

// A week belongs to the year of its Thursday (ISO 8601), or of the Sunday that it
// begins with, so that week 01 is the first full one (49 CFR 574.5).
export const ANCHORS = Object.freeze({ iso: 3, sunday: -1 });
export const DAYS = Object.freeze([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]);

/**
 * How many days month `t` has.
 * @param {number} t
 */
export function days_in(t) {
  const year = Math.floor(t / 12);
  const month = t % 12;
  return DAYS[month] + (month === 1 && _leaps(year) ? 1 : 0);
}

/**
 * The year and the number of the week that a day of month `t` lies in.
 * @param {number} t
 * @param {number} day
 * @param {"iso" | "sunday"} weeks
 * @returns {[number, number]}
 */
export function week(t, day, weeks) {
  let year = Math.floor(t / 12);
  let of_year = day;
  for (let month = 12 * year; month < t; month++) {
    of_year += days_in(month);
  }
  // Monday is 0; Sunday ends an ISO week and begins the other.
  const weekday = (_before(year) + of_year - 1) % 7;
  const monday = of_year - weekday;
  const begins = weeks === "sunday" && weekday === 6 ? monday + 7 : monday;
  let anchor = begins + ANCHORS[weeks];
  if (anchor < 1) {
    year -= 1;
    anchor += 365 + Number(_leaps(year));
  } else if (anchor > 365 + Number(_leaps(year))) {
    anchor -= 365 + Number(_leaps(year));
    year += 1;
  }
  return [year, Math.floor((anchor - 1) / 7) + 1];
}

/** @param {number} year */
function _leaps(year) {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/**
 * Days before the year, counted from a Monday, as 1 January of year 1 is.
 * @param {number} year
 */
function _before(year) {
  const y = year - 1;
  return 365 * y + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400);
}
