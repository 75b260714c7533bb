/**
 * A picture drawn anew on a small canvas and written as JPEG, in the browser. No canvas
 * is ever larger than the result, and everything that holds pixels is given back.
 */

import { PhotoError, examine, stripped } from "./exif.js";
import { unreadable } from "./kind.js";

/** @typedef {import("./kind.js").Kind} Kind */
/** @typedef {import("./photo.js").Photo} Photo */
/** @typedef {import("./photo.js").Size} Size */

/** A hundredth of the largest import: an entry's six photos are a small part of it. */
const MOST_BYTES = 1_000_000;
/** Tried in turn until the photo is small enough; few photos need the second. */
const QUALITIES = [0.82, 0.7, 0.6, 0.5, 0.4, 0.3];
/** Drawn this small, a picture shows whether anything was drawn at all. */
const SAMPLE = { width: 8, height: 8 };

const BLANK =
  "The photo came out blank, so it was not added. Take it again with more light, or " +
  "try another browser: some forbid pages to work on photos.";
const UNDRAWN =
  "This browser could not make a small copy of the photo, so it was not added. " +
  "Close other apps and try again, or try another browser.";

/**
 * The picture upright on white, at the size that `sizing` makes of its own.
 * @param {Blob} file @param {Kind} kind @param {(size: Size) => Size} sizing
 * @returns {Promise<Photo>}
 */
export async function redrawn(file, kind, sizing) {
  const canvas = await drawn(file, kind, sizing);
  try {
    const { width, height } = canvas;
    const bytes = await smallEnough(canvas);
    await checkSeen(bytes);
    return { bytes, width, height };
  } finally {
    release(canvas);
  }
}

/** @param {Blob} file @param {Kind} kind @param {(size: Size) => Size} sizing */
async function drawn(file, kind, sizing) {
  const address = URL.createObjectURL(file);
  const image = new Image();
  try {
    await opened(image, address, kind);
    const size = sizing({ width: image.naturalWidth, height: image.naturalHeight });
    const picture = (await bitmapOf(file, size)) ?? (await decoded(image, kind));
    return onCanvas(picture, size);
  } finally {
    image.removeAttribute("src");
    URL.revokeObjectURL(address);
  }
}

/**
 * Resolves when the image knows its size, upright; its pixels are not decoded yet.
 * @param {HTMLImageElement} image @param {string} address @param {Kind} kind
 * @returns {Promise<void>}
 */
function opened(image, address, kind) {
  return new Promise((resolve, reject) => {
    image.onload = () => resolve();
    image.onerror = () => reject(new PhotoError(unreadable(kind)));
    image.src = address;
  });
}

/**
 * The picture decoded beside the page's thread, upright; null where the browser cannot
 * do so. Then the image is drawn, for which the page stands still.
 * @param {Blob} file @param {Size} size
 */
async function bitmapOf(file, { width, height }) {
  try {
    return await createImageBitmap(file, {
      // The default today; browsers that turned nothing by default refuse the word.
      imageOrientation: "from-image",
      resizeWidth: width,
      resizeHeight: height,
      resizeQuality: "high",
    });
  } catch {
    // The image that is drawn instead tells whether the picture can be read.
    return null;
  }
}

/** @param {HTMLImageElement} image @param {Kind} kind */
async function decoded(image, kind) {
  try {
    await image.decode();
    return image;
  } catch (cause) {
    throw new PhotoError(unreadable(kind), { cause });
  }
}

/** @param {ImageBitmap | HTMLImageElement} picture @param {Size} size */
function onCanvas(picture, size) {
  const canvas = Object.assign(document.createElement("canvas"), size);
  try {
    const pen = penOf(canvas);
    // JPEG has no see-through: what is empty becomes white, not black.
    pen.fillStyle = "white";
    pen.fillRect(0, 0, size.width, size.height);
    pen.imageSmoothingQuality = "high";
    pen.drawImage(picture, 0, 0, size.width, size.height);
    return canvas;
  } catch (cause) {
    release(canvas);
    throw new PhotoError(UNDRAWN, { cause });
  } finally {
    if ("close" in picture) picture.close();
  }
}

/** @param {HTMLCanvasElement} canvas */
function penOf(canvas) {
  const pen = canvas.getContext("2d");
  if (pen) return pen;
  throw new PhotoError(UNDRAWN);
}

/** Some browsers keep a canvas's memory for long. @param {HTMLCanvasElement} canvas */
function release(canvas) {
  Object.assign(canvas, { width: 0, height: 0 });
}

/** @param {HTMLCanvasElement} canvas */
async function smallEnough(canvas) {
  for (const quality of QUALITIES) {
    const bytes = await encoded(canvas, quality);
    if (bytes.byteLength <= MOST_BYTES) return bytes;
  }
  throw new PhotoError(UNDRAWN);
}

/** @param {HTMLCanvasElement} canvas @param {number} quality */
async function encoded(canvas, quality) {
  /** @type {Blob | null} */
  const blob = await new Promise((done) => canvas.toBlob(done, "image/jpeg", quality));
  if (!blob) throw new PhotoError(UNDRAWN);
  try {
    return bareJpeg(new Uint8Array(await blob.arrayBuffer()), canvas);
  } catch (cause) {
    throw new PhotoError(UNDRAWN, { cause });
  }
}

/**
 * What the browser wrote, without the EXIF that some add of their own.
 * @param {Uint8Array} written @param {Size} size
 */
function bareJpeg(written, size) {
  const bytes = stripped(written);
  const { width, height, bare } = examine(bytes);
  const right = bare && width === size.width && height === size.height;
  if (!right) throw new PhotoError("The browser wrote something else than was drawn.");
  return /** @type {ArrayBuffer} */ (bytes.buffer);
}

/**
 * A browser short of memory, or told to hide canvases, gives one colour all over.
 * @param {ArrayBuffer} bytes
 */
async function checkSeen(bytes) {
  const again = await reread(bytes);
  const large = again.width >= SAMPLE.width && again.height >= SAMPLE.height;
  const canvas = onCanvas(again, SAMPLE);
  const { data } = penOf(canvas).getImageData(0, 0, SAMPLE.width, SAMPLE.height);
  release(canvas);
  const blank = data.every((value, i) => value === data[i % 4]);
  if (large && blank) throw new PhotoError(BLANK);
}

/** @param {ArrayBuffer} bytes */
async function reread(bytes) {
  try {
    return await createImageBitmap(new Blob([bytes], { type: "image/jpeg" }));
  } catch (cause) {
    throw new PhotoError(UNDRAWN, { cause });
  }
}
