/**
 * A guide as a file that is given to somebody: two lines of text. The first says what it
 * is and the hash of the second, which is the packed guide, byte for byte as the app
 * fetches it. The twin of Python's `given`.
 *
 * It is text, and called so, because phones hand on texts to any other app, and of JSON
 * only some.
 */

import { judge, prepare, unpack } from "../engine/index.js";
import { FORMAT } from "../engine/guide.js";
import { extent, TransferError } from "../log/json.js";
import { problems } from "./across.js";
import { DESCRIBED, LIMITS } from "./described.js";
import { misfits } from "./fit.js";
import { place, told } from "./told.js";

/** @typedef {import("./told.js").Finding} Finding */
/**
 * A guide that was given and is good: its text as it is kept, and what it says.
 * @typedef {{text: string, guide: import("../shelf.js").Guide}} Given
 */

const HEAD = { app: "fieldid", kind: "guide", format: LIMITS.file };
const KEYS = [...Object.keys(HEAD), "sha256"];
const INSECURE = "Guides can be given and added only where the app is opened over https.";

/** What is wrong with a file, in the places and words that Python has too. */
export class GivenError extends Error {
  name = "GivenError";
  /** @param {readonly Finding[]} found */
  constructor(found) {
    super(said(found));
    this.found = found;
  }
}

/**
 * The file of a packed guide.
 * @param {string} id @param {string} text
 */
export async function written(id, text) {
  const head = JSON.stringify({ ...HEAD, sha256: await hash(text) });
  return new File([`${head}\n${text}\n`], `${id}.guide.txt`, { type: "text/plain" });
}

/**
 * The guide of a file that anybody may have written, or a TransferError that says why it
 * is not taken.
 * @param {Blob} file @returns {Promise<Given>}
 */
export async function taken(file) {
  try {
    if (file.size > LIMITS.bytes) throw alone("too-large", { most: LIMITS.bytes });
    return tried(checked(await textIn(await file.arrayBuffer())));
  } catch (error) {
    if (!(error instanceof GivenError)) throw error;
    throw new TransferError(error.message, { cause: error });
  }
}

/** The guide of a text that is kept, or that a file holds. @param {string} text @returns {Given} */
export function checked(text) {
  const packed = parsed(text);
  const format = tableOf(packed).format;
  if (format !== FORMAT) throw later(format);
  const found = [];
  for (const each of misfits(packed, DESCRIBED)) if (found.push(each) === LIMITS.told) break;
  // What has the wrong form cannot be looked into.
  const all = found.length ? found : problems(packed).slice(0, LIMITS.told);
  if (all.length) throw new GivenError(all);
  const guide = /** @type {import("../shelf.js").Guide} */ (unpack(packed));
  return { text, guide };
}

/** The guide, once it was judged with: nothing read, and so nothing known. @param {Given} given */
function tried(given) {
  const { guide } = given;
  try {
    judge(prepare(guide), { guide: guide.id, items: [{ member: null, readings: [], gone: [] }], claim: null });
  } catch (cause) {
    throw new TransferError("This guide cannot be added: it cannot be judged with.", { cause });
  }
  return given;
}

/** The hash of a text in hexadecimal. @param {string} text */
export async function hash(text) {
  if (!globalThis.crypto?.subtle) throw new TransferError(INSECURE);
  const digest = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** The second line, if the first says what it is and its hash. @param {ArrayBuffer} bytes */
async function textIn(bytes) {
  const text = decoded(bytes);
  // Mail may have changed how lines end.
  const end = text.indexOf("\n");
  const head = headOf((end < 0 ? text : text.slice(0, end)).trim());
  if (head.format !== LIMITS.file) throw later(head.format);
  const body = (end < 0 ? "" : text.slice(end)).replace(/^[\r\n ]+|[\r\n ]+$/g, "");
  if ((await hash(body)) !== head.sha256) throw alone("damaged");
  return body;
}

/** @param {ArrayBuffer} bytes */
function decoded(bytes) {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw alone("no-guide");
  }
}

/** @param {string} line @returns {Record<string, unknown>} */
function headOf(line) {
  const said = line.length <= LIMITS.head ? tableOf(read(line)) : {};
  const isOurs = Object.keys(said).sort().join() === [...KEYS].sort().join();
  if (!isOurs || said.app !== HEAD.app || said.kind !== HEAD.kind) throw alone("no-guide");
  return said;
}

/** @param {string} text */
function parsed(text) {
  // Found without reading it as JSON, which would fill the stack first.
  if (extent(text).deep > LIMITS.json) throw alone("too-deep");
  const value = read(text);
  if (value === undefined) throw alone("no-guide");
  return value;
}

/** What a text is as JSON; undefined if it is none. @param {string} text */
function read(text) {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** @param {unknown} value @returns {Record<string, unknown>} */
const tableOf = (value) =>
  typeof value === "object" && value !== null && !Array.isArray(value)
    ? /** @type {Record<string, unknown>} */ (value)
    : {};

/** Whatever is no format that is known here may be one of a newer app. @param {unknown} format */
function later(format) {
  const isNewer = Number.isInteger(format) && Number(format) > FORMAT;
  return isNewer ? alone("later-format", { value: Number(format) }) : alone("no-guide");
}

/** A refusal of the whole file. @param {string} code @param {Record<string, string | number>} [words] */
const alone = (code, words) => new GivenError([told([], code, words)]);

/** One sentence. @param {readonly Finding[]} found */
function said([[path, code, wrong], ...others]) {
  if (code === "later-format") return `This guide cannot be added: ${wrong}; update the app when online.`;
  if (!path.length) return `This file cannot be added: it ${wrong}.`;
  const more = others.length ? ` (and ${others.length} more)` : "";
  return `This guide cannot be added. ${place(path)}: ${wrong}${more}.`;
}
