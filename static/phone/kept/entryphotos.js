/** The photos of an entry: added one by one, tied to clues, shown large, taken away. */

import { book, newId } from "../log/book.js";
import { roomLeft, takePhoto } from "../log/photo.js";
import { draft } from "../session.js";
import { listen, listenChanges, slot } from "../view/dom.js";
import { sayOn } from "../view/entry.js";
import { closeLarge, fillPhotos, showLarge } from "../view/entryphotos.js";
import { forgetMissed, isMissed } from "./missed.js";
import { sentence } from "./sentence.js";
import { doingWith, isSeen, tell } from "./shown.js";

/** @typedef {import("../kept.js").App} App */
/** @typedef {import("../log/entries.js").Photo} Photo */
/** @typedef {import("../log/record.js").Entry} Entry */
/** @typedef {import("../log/record.js").PhotoNote} PhotoNote */
/** @typedef {import("./shown.js").Shown} Shown */
/** A photo that can be had back. @typedef {{note: PhotoNote, photo: Photo, place: number}} Removed */

const WORKING = "Working on the photo…";
const TOO_MANY = "A find takes six photos at most; the others were left out.";

/**
 * Listens to what is done with photos.
 * @param {HTMLElement} root
 * @param {App} app
 * @param {() => Shown} now what is shown
 */
export function startPhotos(root, app, now) {
  const doing = doingWith(app, now);
  /** @param {DOMStringMap} data */
  const named = ({ photo = "" }) => now().entry.photos.findIndex(({ id }) => id === photo);
  listen(root, {
    camera: () => doing((here) => openCamera(here, app)),
    gallery: () => slot(root, "from-gallery").click(),
    larger: (data) => doing((here) => enlarge(here, named(data))),
    close: () => closeLarge(root),
    remove: (data) => doing((here) => remove(here, app, named(data))),
    "undo-photo": () => doing((here) => bringBack(here, app)),
  });
  listenChanges(root, {
    shows: (clue, _, data) => doing((here) => tie(here, app, { at: named(data), clue })),
  });
  root.addEventListener("change", ({ target }) => {
    if (!(target instanceof HTMLInputElement) || target.type !== "file") return;
    const files = [...(target.files ?? [])];
    target.value = "";
    if (files.length) doing((here) => add(here, app, files));
  });
  // The camera was closed without a photo.
  root.addEventListener("cancel", ({ target }) => {
    if (target instanceof HTMLInputElement) book.awaitNoMore().catch(app.failed);
  });
}

/** Fills in the photos of what is shown. @param {Shown} shown */
export async function fillIn({ frame, entry, opened, figures: made }) {
  const there = await book.photosOf(entry);
  const clues = opened?.guide.clues ?? [];
  fillPhotos(frame, { notes: entry.photos, there, clues, left: roomLeft(entry.photos), made });
}

/**
 * The phone may end this page while its camera is open, so all is on the disk before.
 * @param {Shown} here @param {App} app
 */
async function openCamera(here, app) {
  const desk = app.desk();
  const open = desk && draft(desk.session, desk.stamp);
  await book.beforeCamera(open, { entry: here.id, clue: null });
  // Whoever is quick is elsewhere already.
  if (!isSeen(here)) return book.awaitNoMore();
  slot(here.frame, "from-camera").click();
}

/** @param {Shown} here @param {App} app @param {File[]} files */
async function add(here, app, files) {
  const { frame, entry } = here;
  const fitting = files.slice(0, roomLeft(entry.photos));
  const whys = files.length > fitting.length ? [TOO_MANY] : [];
  let kept = entry;
  for (const file of fitting) {
    sayOn(frame, WORKING);
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
  here.removed = null;
  const say = [added(count), ...whys].filter(Boolean).join(" ");
  if (whys.length) tell(here, app, say);
  else sayOn(frame, say);
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

/** @param {Shown} here @param {number} place */
async function enlarge(here, place) {
  const photo = await photoAt(here.entry, place);
  if (photo && isSeen(here)) showLarge(here.frame, photo.bytes, `Photo ${place + 1}`);
}

/** @param {Entry} entry @param {number} place */
async function photoAt(entry, place) {
  const photos = await book.photosOf(entry);
  return photos.find(({ id }) => id === entry.photos[place]?.id);
}

/** @param {Shown} here @param {App} app @param {number} place */
async function remove(here, app, place) {
  const { frame, entry } = here;
  const note = entry.photos[place];
  const photo = await photoAt(entry, place);
  await book.change(entry.id, { photos: entry.photos.filter((each) => each !== note) });
  here.removed = photo ? { note, photo, place } : null;
  sayOn(frame, `Photo ${place + 1} is removed.`, here.removed !== null);
  app.redraw();
  if (here.removed) slot(frame, "undo").focus();
}

/** @param {Shown} here @param {App} app */
async function bringBack(here, app) {
  const { frame, entry, removed } = here;
  if (!removed) return;
  const { note, photo, place } = removed;
  await book.change(entry.id, { photos: entry.photos.toSpliced(place, 0, note) }, [photo]);
  here.removed = null;
  sayOn(frame, `Photo ${place + 1} is back.`);
  app.redraw();
  slot(frame, "photos-title").focus();
}

/**
 * What a photo shows.
 * @param {Shown} here @param {App} app
 * @param {{at: number, clue: string}} shows
 */
async function tie({ frame, entry: { id, photos } }, app, { at, clue }) {
  const told = photos.with(at, { ...photos[at], clue: clue || null });
  await book.change(id, { photos: told });
  sayOn(frame, `What photo ${at + 1} shows is saved.`);
  app.redraw();
}
