// Entries of the log with photos that are JPEG files as far as anything here looks.

import { entry } from "../../static/phone/log/record.js";
import { id, json } from "./kept.js";

const two = (value) => [value >> 8, value & 255];
const part = (marker, inside) => [0xff, marker, ...two(inside.length + 2), ...inside];

/** A JPEG without a picture; its data differs from number to number. */
export function jpeg(number, { width = 40, height = 30, length = 100 } = {}) {
  const frame = [8, ...two(height), ...two(width), 1, 1, 0x11, 0];
  const data = Array.from({ length }, (_, i) => (i * 7 + number) % 255);
  const scan = [...part(0xda, [1, 1, 0, 0, 63, 0]), ...data];
  return Uint8Array.from([0xff, 0xd8, ...part(0xc0, frame), ...scan, 0xff, 0xd9]);
}

/** An entry whose own and whose photos' ids end in these numbers, and its photos. */
export function pictured(number, photoNumbers = [], fields = {}) {
  const photos = photoNumbers.map((each) => ({
    id: id(each),
    entry: id(number),
    type: "image/jpeg",
    bytes: jpeg(each).buffer,
  }));
  const notes = photos.map(({ id: own, bytes }) => ({
    id: own,
    clue: "rings",
    width: 40,
    height: 30,
    bytes: bytes.byteLength,
  }));
  return { entry: entry(json({ id: id(number), photos: notes, ...fields })), photos };
}

/** What gives an entry's photos, as the book does. */
export const photosFrom = (kept) => async (wanted) =>
  kept.find(({ entry: one }) => one.id === wanted.id)?.photos ?? [];
