// The three headers of a ZIP file, each written down once, to write and to read by.
// Pure; zip.js is the way in.

/** @typedef {readonly (readonly [string, 2 | 4])[]} Layout Fields, each with its bytes. */
/** @typedef {Record<string, number>} Values */

/** What both headers of a file say of it. @type {Layout} */
const SHARED = [
  ["needs", 2],
  ["flags", 2],
  ["method", 2],
  ["time", 2],
  ["day", 2],
  ["crc", 4],
  ["packed", 4],
  ["size", 4],
  ["nameLength", 2],
  ["extraLength", 2],
];

/** Stands before the bytes of a file; its name follows. @type {Layout} */
export const LOCAL = [["mark", 4], ...SHARED];

/** Stands in the directory; the file's name follows. @type {Layout} */
export const LISTED = [
  ["mark", 4],
  ["madeBy", 2],
  ...SHARED,
  ["commentLength", 2],
  ["disk", 2],
  ["inner", 2],
  ["outer", 4],
  ["at", 4],
];

/** Ends the ZIP and says where the directory lies. @type {Layout} */
export const END = [
  ["mark", 4],
  ["disk", 2],
  ["firstDisk", 2],
  ["onDisk", 2],
  ["count", 2],
  ["length", 4],
  ["at", 4],
  ["commentLength", 2],
];

/** What each header begins with. */
export const MARKS = { local: 0x04034b50, listed: 0x02014b50, end: 0x06054b50 };

/** How many bytes a header takes. @param {Layout} layout */
export const lengthOf = (layout) =>
  layout.reduce((length, [, bytes]) => length + bytes, 0);

/**
 * The header with these values; a field without one is 0.
 * @param {Layout} layout @param {Values} values
 */
export function header(layout, values) {
  const view = new DataView(new ArrayBuffer(lengthOf(layout)));
  let at = 0;
  for (const [name, bytes] of layout) {
    const value = values[name] ?? 0;
    if (bytes === 2) view.setUint16(at, value, true);
    else view.setUint32(at, value, true);
    at += bytes;
  }
  return new Uint8Array(view.buffer);
}

/**
 * The values of a header that begins at a place; a RangeError if the bytes end before.
 * @param {Layout} layout @param {Uint8Array} bytes @param {number} start @returns {Values}
 */
export function values(layout, bytes, start) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  /** @type {Values} */
  const read = {};
  let at = start;
  for (const [name, length] of layout) {
    read[name] = length === 2 ? view.getUint16(at, true) : view.getUint32(at, true);
    at += length;
  }
  return read;
}
