// CRC-32 as ZIP uses it (the polynomial of ISO/IEC 8802-3, lowest bit first).

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit += 1) rest = (rest >>> 1) ^ (rest & 1 ? 0xedb88320 : 0);
  return rest;
});

/** The check sum of some bytes, from 0 to 2^32 - 1. @param {Uint8Array} bytes */
export function crc32(bytes) {
  let rest = 0xffffffff;
  for (let i = 0; i < bytes.length; i += 1) {
    rest = (rest >>> 8) ^ TABLE[(rest ^ bytes[i]) & 0xff];
  }
  return ~rest >>> 0;
}
