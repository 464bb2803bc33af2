import { sha256 } from "./sha-256.js";

/**
 * The hash of some bytes, as the build writes it.
 * @param {Uint8Array<ArrayBuffer>} bytes
 */
export async function hashOf(bytes) {
  const own = globalThis.crypto?.subtle; // hidden from pages that are not served securely
  const digest = own ? new Uint8Array(await own.digest("SHA-256", bytes)) : sha256(bytes);
  return `sha256-${btoa(String.fromCharCode(...digest))}`;
}
