// What the phone says of each case, one a line: {target, content} in, an answer out. The
// first line names the folder with the packed guides.

import { Buffer } from "node:buffer";
import { readFileSync } from "node:fs";
import { createInterface } from "node:readline";

import { judge, prepare, unpack } from "../../static/phone/engine/index.js";
import { taken } from "../../static/phone/guests/file.js";
import { opened } from "../../static/phone/log/transfer.js";
import { find, restore } from "../../static/phone/session.js";
import { apart, prompt, rows } from "../../static/phone/spelling.js";
import { meant, NOTHING, pressed, typing } from "../../static/phone/typing.js";

const TOLD = ["DraftError", "GivenError", "TransferError", "ZipError"];
const OF_THE_FILE = ["no-guide", "not-utf-8", "too-deep"];

/** @param {Error} error */
function refused(error) {
  if (!TOLD.includes(error.name)) throw error;
  return { taken: false, say: error.message };
}

const says = {
  async given(bytes) {
    try {
      await taken(new Blob([bytes]));
      return { taken: true };
    } catch (error) {
      const said = refused(error);
      const codes = error.cause.found.map(([, code]) => code);
      return { ...said, codes: OF_THE_FILE.includes(codes[0]) ? [] : codes };
    }
  },

  async log(bytes) {
    try {
      const { incoming, refused: not } = await opened(new Blob([bytes]));
      if (not.some(({ why }) => !why)) throw new Error("a find is refused without a word");
      const places = (all) => all.map(({ place }) => place).sort((a, b) => a - b);
      return { taken: true, places: places(incoming), refused: places(not) };
    } catch (error) {
      return refused(error);
    }
  },

  async draft(bytes) {
    const { guide: id, draft } = JSON.parse(bytes.toString());
    const guide = guides[id];
    try {
      const { session, lost } = restore(draft, guide, "y");
      if (!lost.every(Boolean)) throw new Error("something is left out without a word");
      judge(prepare(guide), find(session, guide));
      return { taken: true };
    } catch (error) {
      return refused(error);
    }
  },

  async keys(bytes) {
    const { guide, clue: id, keys } = JSON.parse(bytes.toString());
    const { kind } = guides[guide].clues.find((clue) => clue.id === id);
    const { wrong, reading } = meant(kind, typed(kind, keys).typed);
    return { taken: !wrong, say: wrong, reading };
  },
};

/** What stands in the field, or on the keypad with all that it shows, once this was typed. */
function typed(kind, keys) {
  if (kind.name === "measure") return typing(NOTHING, keys.join(""));
  return keys.reduce((entry, key) => {
    const next = pressed(entry, kind, key);
    if (kind.name === "code") {
      for (const shown of [rows, prompt, apart]) shown(kind, next.typed);
    }
    return next;
  }, NOTHING);
}

const lines = createInterface({ input: process.stdin })[Symbol.asyncIterator]();
const guides = JSON.parse(readFileSync((await lines.next()).value, "utf8"));
for (const id of Object.keys(guides)) guides[id] = unpack(guides[id]);
for await (const line of lines) {
  const { target, content } = JSON.parse(line);
  const before = process.cpuUsage();
  let said;
  try {
    said = await says[target](Buffer.from(content, "base64"));
  } catch (error) {
    said = { crash: String(error?.stack ?? error) };
  }
  const { user, system } = process.cpuUsage(before);
  console.log(JSON.stringify({ ...said, seconds: (user + system) / 1e6 }));
}
