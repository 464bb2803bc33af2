/**
 * The hash of some bytes, as the build writes it.
 * @param {Uint8Array<ArrayBuffer>} bytes
 */
export async function hashOf(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return `sha256-${btoa(String.fromCharCode(...digest))}`;
}
