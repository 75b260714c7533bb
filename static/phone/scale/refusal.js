/** Why no size can be had from the points in a photo. A leaf. */

/** A size that cannot be had; the message is a sentence to show. */
export class ScaleError extends Error {
  name = "ScaleError";
}
