/**
 * How records stand in a file of the journal: one behind another, each its length and its checksum [4 bytes each,
 * lowest first], then its JSON as UTF-8. Where one is not whole, a browser was broken off: what follows does not count.
 */

const HEAD = 8; // [bytes]
const POLYNOMIAL = 0xedb88320; // CRC-32 as in ISO 3309 (zip, PNG), bits reversed

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ POLYNOMIAL : rest >>> 1;
  return rest;
});

/** The CRC-32 of bytes. @param {Uint8Array} bytes */
export function checksum(bytes) {
  let rest = 0xffffffff;
  for (const byte of bytes) rest = (rest >>> 8) ^ TABLE[(rest ^ byte) & 0xff];
  return (rest ^ 0xffffffff) >>> 0;
}

/**
 * Records as they stand in the file.
 * @param {unknown[]} records
 */
export function written(records) {
  const encoder = new TextEncoder();
  const texts = records.map((record) => encoder.encode(JSON.stringify(record)));
  const bytes = new Uint8Array(texts.reduce((sum, text) => sum + HEAD + text.length, 0));
  const view = new DataView(bytes.buffer);
  let at = 0;
  for (const text of texts) {
    view.setUint32(at, text.length, true);
    view.setUint32(at + 4, checksum(text), true);
    bytes.set(text, at + HEAD);
    at += HEAD + text.length;
  }
  return bytes;
}

/**
 * The whole records at the beginning of bytes, and where they end.
 * @param {Uint8Array} bytes
 * @returns {{records: any[], end: number}}
 */
export function found(bytes) {
  const decoder = new TextDecoder();
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const records = [];
  let end = 0;
  while (end + HEAD <= bytes.length) {
    const length = view.getUint32(end, true);
    if (!length || end + HEAD + length > bytes.length) break;
    const text = bytes.subarray(end + HEAD, end + HEAD + length);
    if (checksum(text) !== view.getUint32(end + 4, true)) break;
    records.push(JSON.parse(decoder.decode(text)));
    end += HEAD + length;
  }
  return { records, end };
}

/** The folder of the private file system that the files of one handbook lie in. @param {string} place */
export const folderOf = (place) => `workroom ${encodeURIComponent(place)}`;
