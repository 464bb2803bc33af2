/**
 * Which Python runtime belongs to this copy of the site. The build writes the real list over this file;
 * a site built without a runtime keeps this empty one, and its calculators show their worked answers only.
 *
 * @typedef {{name: string, bytes: number, integrity: string}} RuntimeFile
 * @typedef {[address: number, length: number]} Run a stretch of memory [bytes]
 * @typedef {{head: number, memory: number, kept: Run[], brought: Run[], integrity: string}} SnapshotListing lengths of
 *   `head` and `memory` [bytes]; what is `kept` in it and what the machine has `brought`, with the hash of that
 * @typedef {object} Bundle
 * @property {Record<string, RuntimeFile>} files by what each is for
 * @property {string} folder below the site
 * @property {string[]} packages
 * @property {Record<string, string>} environment
 * @property {object} lock as Pyodide reads it
 * @property {SnapshotListing} snapshot
 */
export default /** @type {Bundle | null} */ (null);
