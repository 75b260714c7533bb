/** Photos on the page: from their bytes, and without anything left behind. */

/**
 * The image of a photo. Once it is drawn, or cannot be, its address is given back.
 * @param {ArrayBuffer} bytes
 * @param {string} alt
 * @param {() => void} [failed] what to do if it cannot be drawn
 */
export function shown(bytes, alt, failed = () => {}) {
  const image = new Image();
  const address = URL.createObjectURL(new Blob([bytes], { type: "image/jpeg" }));
  image.alt = alt;
  image.decoding = "async";
  image.onload = () => URL.revokeObjectURL(address);
  image.onerror = () => {
    URL.revokeObjectURL(address);
    failed();
  };
  image.src = address;
  return image;
}
