/** The photos of an entry: added one by one, tied to clues, shown large, taken away. */

import { book, newId } from "../log/book.js";
import { roomLeft, takePhoto } from "../log/photo.js";
import { draft } from "../session.js";
import { listen, listenChanges, slot } from "../view/dom.js";
import { sayOn } from "../view/entry.js";
import { closeLarge, fillPhotos, showLarge } from "../view/entryphotos.js";
import { forgetMissed, isMissed } from "./missed.js";
import { attempt, sentence } from "./sentence.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../log/entries.js").Photo} Photo */
/** @typedef {import("../log/record.js").Entry} Entry */
/** @typedef {import("../log/record.js").PhotoNote} PhotoNote */
/** @typedef {import("./entry.js").Shown} Shown */
/** @typedef {{note: PhotoNote, photo: Photo, place: number}} Removed */

const WORKING = "Working on the photo…";
const TOO_MANY = "A find takes six photos at most; the others were left out.";

/** The photo that was removed last, to be had back. @type {Removed | null} */
let removed = null;

/**
 * Listens to what is done with photos.
 * @param {HTMLElement} root
 * @param {App} app
 * @param {() => Shown} now what is shown
 */
export function startPhotos(root, app, now) {
  /** @param {() => Promise<void>} work */
  const doing = (work) => void attempt(work, (why) => sayOn(root, why), app.failed);
  /** @param {DOMStringMap} data */
  const named = ({ photo = "" }) => now().entry.photos.findIndex(({ id }) => id === photo);
  listen(root, {
    camera: () => doing(() => openCamera(root, app, now().entry)),
    gallery: () => slot(root, "from-gallery").click(),
    larger: (data) => doing(() => enlarge(root, now().entry, named(data))),
    close: () => closeLarge(root),
    remove: (data) => doing(() => remove(root, app, now().entry, named(data))),
    "undo-photo": () => doing(() => bringBack(root, app, now().entry)),
  });
  listenChanges(root, {
    shows: (clue, _, data) => doing(() => tie(root, app, now().entry, { at: named(data), clue })),
  });
  root.addEventListener("change", ({ target }) => {
    if (!(target instanceof HTMLInputElement) || target.type !== "file") return;
    const files = [...(target.files ?? [])];
    target.value = "";
    if (files.length) doing(() => add(root, app, now().entry, files));
  });
  window.addEventListener("hashchange", () => void (removed = null));
  // The camera was closed without a photo.
  root.addEventListener("cancel", ({ target }) => {
    if (target instanceof HTMLInputElement) book.awaitNoMore().catch(app.failed);
  });
}

/** Fills in the photos of what is shown. @param {HTMLElement} root @param {Shown} shown */
export async function fillIn(root, { entry, opened, figures: made }) {
  const there = await book.photosOf(entry);
  const clues = opened?.guide.clues ?? [];
  fillPhotos(root, { notes: entry.photos, there, clues, left: roomLeft(entry.photos), made });
}

/**
 * The phone may end this page while its camera is open, so all is on the disk before.
 * @param {HTMLElement} root @param {App} app @param {Entry} entry
 */
async function openCamera(root, app, { id }) {
  const desk = app.desk();
  const open = desk && draft(desk.session, desk.stamp);
  await book.beforeCamera(open, { entry: id, clue: null });
  slot(root, "from-camera").click();
}

/** @param {HTMLElement} root @param {App} app @param {Entry} entry @param {File[]} files */
async function add(root, app, entry, files) {
  const fitting = files.slice(0, roomLeft(entry.photos));
  const whys = files.length > fitting.length ? [TOO_MANY] : [];
  let kept = entry;
  for (const file of fitting) {
    sayOn(root, WORKING);
    try {
      kept = await withPhoto(kept, file);
    } catch (error) {
      // One that cannot be read does not stop the others.
      whys.unshift(sentence(error));
    }
  }
  const count = kept.photos.length - entry.photos.length;
  if (isMissed(entry.id)) await forgetMissed();
  else if (!count) await book.awaitNoMore();
  removed = null;
  sayOn(root, [added(count), ...whys].filter(Boolean).join(" "));
  app.redraw();
}

/** @param {number} count */
const added = (count) => {
  if (!count) return "";
  return count === 1 ? "The photo is added." : `${count} photos are added.`;
};

/** @param {Entry} entry @param {File} file */
async function withPhoto({ id: owner, photos }, file) {
  const { bytes, width, height } = await takePhoto(file);
  const id = newId();
  /** @type {PhotoNote} */
  const note = { id, clue: null, width, height, bytes: bytes.byteLength };
  /** @type {Photo} */
  const photo = { id, entry: owner, type: "image/jpeg", bytes };
  return book.change(owner, { photos: [...photos, note] }, [photo]);
}

/** @param {HTMLElement} root @param {Entry} entry @param {number} place */
async function enlarge(root, entry, place) {
  const photo = await photoAt(entry, place);
  if (photo) showLarge(root, photo.bytes, `Photo ${place + 1}`);
}

/** @param {Entry} entry @param {number} place */
async function photoAt(entry, place) {
  const photos = await book.photosOf(entry);
  return photos.find(({ id }) => id === entry.photos[place]?.id);
}

/** @param {HTMLElement} root @param {App} app @param {Entry} entry @param {number} place */
async function remove(root, app, entry, place) {
  const note = entry.photos[place];
  const photo = await photoAt(entry, place);
  await book.change(entry.id, { photos: entry.photos.filter((each) => each !== note) });
  removed = photo ? { note, photo, place } : null;
  sayOn(root, `Photo ${place + 1} is removed.`, removed !== null);
  app.redraw();
  if (removed) slot(root, "undo").focus();
}

/** @param {HTMLElement} root @param {App} app @param {Entry} entry */
async function bringBack(root, app, entry) {
  if (!removed || removed.photo.entry !== entry.id) return;
  const { note, photo, place } = removed;
  await book.change(entry.id, { photos: entry.photos.toSpliced(place, 0, note) }, [photo]);
  removed = null;
  sayOn(root, `Photo ${place + 1} is back.`);
  app.redraw();
  slot(root, "photos-title").focus();
}

/**
 * What a photo shows.
 * @param {HTMLElement} root @param {App} app @param {Entry} entry
 * @param {{at: number, clue: string}} shows
 */
async function tie(root, app, { id, photos }, { at, clue }) {
  const told = photos.with(at, { ...photos[at], clue: clue || null });
  await book.change(id, { photos: told });
  sayOn(root, `What photo ${at + 1} shows is saved.`);
  app.redraw();
}
