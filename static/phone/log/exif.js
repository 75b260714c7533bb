/**
 * What a JPEG file holds besides its picture: which way up it is, whether it says where
 * it was taken, and the same file without all that. Pure; reads no more than it needs.
 */

/** What was wrong with a photo; the message is a sentence to show. */
export class PhotoError extends Error {
  name = "PhotoError";
}

/**
 * `width` and `height` are as stored, before the orientation turns them; `gps` is false
 * only where a place was ruled out; `bare` if nothing is there but the picture.
 * @typedef {{
 *   width: number, height: number, orientation: number,
 *   exif: boolean, gps: boolean, bare: boolean,
 * }} Jpeg
 */

/**
 * A piece of the file from its marker on; what it carries begins at `inside`.
 * @typedef {{marker: number, start: number, inside: number, end: number}} Segment
 */

const AGAIN = "Choose it again, or take it anew.";
const NO_JPEG = "This file is not a JPEG picture.";
const SHORT = `This photo is cut short: its end is missing. ${AGAIN}`;
const SCATTERED = `This photo is damaged: it is in too many parts. ${AGAIN}`;
const SIZELESS = `This photo is damaged: it does not say how large it is. ${AGAIN}`;

const START = 0xd8;
const END = 0xd9;
const SCAN = 0xda;
const APP1 = 0xe1;
/** From C0 to CF a frame begins, whose header has the size; not with these three. */
const FRAME = 0xc0;
const NO_FRAMES = [0xc4, 0xc8, 0xcc];
/** From C0 to DF stands what decoders need; all else is for people or programs. */
const NEEDED = 0xdf;
/** Far more than any camera writes; a hostile file could have millions. */
const MOST_SEGMENTS = 20_000;

const EXIF = "Exif\0\0";
/** Application data without which the picture would look different, by marker. */
const LOOKS = new Map([
  [0xe0, "JFIF\0"],
  [0xe2, "ICC_PROFILE\0"],
  [0xee, "Adobe"],
]);

const ORIENTATION = 0x0112;
const GPS = 0x8825;
/** The type of an EXIF value of two bytes. */
const TWO_BYTES = 3;
const ENTRY = 12;

/** @param {Uint8Array} bytes */
export function isJpeg(bytes) {
  return bytes[0] === 0xff && bytes[1] === START && bytes[2] === 0xff;
}

/**
 * What the file holds; a PhotoError if it is no JPEG, cut short or damaged.
 * @param {Uint8Array} bytes @returns {Jpeg}
 */
export function examine(bytes) {
  const segments = [...segmentsOf(bytes)];
  const notes = segments.filter((segment) => isNote(bytes, segment));
  const app1 = notes.filter(({ marker }) => marker === APP1);
  const exif = app1.filter((segment) => carries(bytes, segment, EXIF));
  const places = app1.map((segment) =>
    exif.includes(segment) ? readExif(bytes, segment).gps : namesPlace(bytes, segment),
  );
  return {
    ...sizeOf(bytes, segments),
    orientation: exif.length ? readExif(bytes, exif[0]).orientation : 1,
    exif: exif.length > 0,
    gps: places.includes(true),
    bare: notes.length === 0 && lengthOf(segments) === bytes.length,
  };
}

/**
 * The same picture alone: no EXIF, no place, no comment, nothing after its end. Its
 * orientation goes too, so this is for pictures that stand upright as stored.
 * @param {Uint8Array} bytes
 */
export function stripped(bytes) {
  const kept = [...segmentsOf(bytes)].filter((segment) => !isNote(bytes, segment));
  const out = new Uint8Array(lengthOf(kept));
  let at = 0;
  for (const { start, end } of kept) {
    out.set(bytes.subarray(start, end), at);
    at += end - start;
  }
  return out;
}

/** @param {Segment[]} segments */
function lengthOf(segments) {
  return segments.reduce((sum, { start, end }) => sum + end - start, 0);
}

/**
 * All pieces from the start of the image to its end, each scan with its data. What lies
 * between two pieces belongs to none: decoders skip it, too.
 * @param {Uint8Array} bytes @returns {Generator<Segment, void>}
 */
function* segmentsOf(bytes) {
  if (!isJpeg(bytes)) throw new PhotoError(NO_JPEG);
  yield { marker: START, start: 0, inside: 2, end: 2 };
  let at = 2;
  for (let count = 1; count < MOST_SEGMENTS; count++) {
    const start = nextMarker(bytes, at);
    const marker = bytes[start + 1];
    const inside = start + 2;
    if (marker === END) {
      yield { marker, start, inside, end: inside };
      return;
    }
    const end = inside + lengthAt(bytes, inside);
    at = marker === SCAN ? nextMarker(bytes, end) : end;
    yield { marker, start, inside: inside + 2, end: at };
  }
  throw new PhotoError(SCATTERED);
}

/**
 * Where the next marker stands; fill bytes, stuffed zeros and restarts are none.
 * @param {Uint8Array} bytes @param {number} from
 */
function nextMarker(bytes, from) {
  let at = bytes.indexOf(0xff, from);
  while (at >= 0 && at + 1 < bytes.length) {
    const code = bytes[at + 1];
    const restart = code >= 0xd0 && code <= 0xd7;
    if (code > 0x01 && code < 0xff && !restart) return at;
    at = bytes.indexOf(0xff, at + 1);
  }
  throw new PhotoError(SHORT);
}

/** @param {Uint8Array} bytes @param {number} at */
function lengthAt(bytes, at) {
  const left = bytes.length - at;
  if (left < 2) throw new PhotoError(SHORT);
  const length = bytes[at] * 256 + bytes[at + 1];
  if (length >= 2 && length <= left) return length;
  throw new PhotoError(
    `This photo is damaged: one of its parts claims ${length} bytes ` +
      `where ${left} are left. ${AGAIN}`,
  );
}

/** @param {Uint8Array} bytes @param {Segment[]} segments */
function sizeOf(bytes, segments) {
  const frame = segments.find(({ marker }) => isFrame(marker));
  const view = frame && viewOf(bytes, frame);
  // One byte of precision comes first.
  if (!view || view.byteLength < 5) throw new PhotoError(SIZELESS);
  const size = { height: view.getUint16(1), width: view.getUint16(3) };
  if (!size.width || !size.height) throw new PhotoError(SIZELESS);
  return size;
}

/** @param {number} marker */
function isFrame(marker) {
  return (marker & 0xf0) === FRAME && !NO_FRAMES.includes(marker);
}

/**
 * Whether the picture looks the same without it.
 * @param {Uint8Array} bytes @param {Segment} segment
 */
function isNote(bytes, segment) {
  const { marker } = segment;
  if (marker >= FRAME && marker <= NEEDED) return false;
  const look = LOOKS.get(marker);
  return look === undefined || !carries(bytes, segment, look);
}

/** @param {Uint8Array} bytes @param {Segment} segment @param {string} name */
function carries(bytes, { inside, end }, name) {
  return textOf(bytes, inside, Math.min(inside + name.length, end)) === name;
}

/** XMP is text. @param {Uint8Array} bytes @param {Segment} segment */
function namesPlace(bytes, { inside, end }) {
  return /gps/i.test(textOf(bytes, inside, end));
}

/** @param {Uint8Array} bytes @param {number} start @param {number} end */
function textOf(bytes, start, end) {
  return new TextDecoder("latin1").decode(bytes.subarray(start, end));
}

/**
 * The orientation, 1 where none can be read, as browsers take it; and whether a place
 * is there, which is not ruled out where the list of entries cannot be read.
 * @param {Uint8Array} bytes @param {Segment} segment
 */
function readExif(bytes, { inside, end }) {
  const view = viewOf(bytes, { inside: inside + EXIF.length, end });
  const list = entriesOf(view);
  if (!list) return { orientation: 1, gps: true };
  const { entries, little } = list;
  const turned = entries
    .filter((at) => view.getUint16(at, little) === ORIENTATION)
    .filter((at) => view.getUint16(at + 2, little) === TWO_BYTES)
    .map((at) => view.getUint16(at + 8, little));
  const [orientation = 1] = turned.filter((way) => way >= 1 && way <= 8);
  const gps = entries.some((at) => view.getUint16(at, little) === GPS);
  return { orientation, gps };
}

/**
 * Where the entries of the first list of EXIF stand; null if they do not fit.
 * @param {DataView} view
 */
function entriesOf(view) {
  if (view.byteLength < 8) return null;
  const order = view.getUint16(0);
  const little = order === 0x4949;
  if (!little && order !== 0x4d4d) return null;
  if (view.getUint16(2, little) !== 42) return null;
  const list = view.getUint32(4, little);
  if (list + 2 > view.byteLength) return null;
  const count = view.getUint16(list, little);
  if (list + 2 + count * ENTRY > view.byteLength) return null;
  const entries = Array.from({ length: count }, (_, i) => list + 2 + i * ENTRY);
  return { entries, little };
}

/** @param {Uint8Array} bytes @param {{inside: number, end: number}} segment */
function viewOf(bytes, { inside, end }) {
  return new DataView(bytes.buffer, bytes.byteOffset + inside, end - inside);
}
