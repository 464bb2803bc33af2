// Takes a snapshot of Python's memory with every calculator imported: node snapshot.mjs BUNDLE TARGET
// Clock and chance are held still, so that the same parts give the same snapshot.
import nodeCrypto from "node:crypto";
import { readFile, writeFile } from "node:fs/promises";
import { pathToFileURL } from "node:url";

const [bundle, target] = process.argv.slice(2);
const listing = JSON.parse(await readFile(`${bundle}/listing.json`, "utf8"));

const NOON = Date.UTC(2020, 0, 1, 12);
class StillDate extends Date {
  /** @param {any[]} given */
  constructor(...given) {
    super(.../** @type {[number]} */ (given.length ? given : [NOON]));
  }
  static now = () => NOON;
}
Object.assign(globalThis, { Date: StillDate });
performance.now = () => 0;
/** @returns {[number, number]} */
const stillTime = () => [0, 0];
process.hrtime = Object.assign(stillTime, { bigint: () => 0n });
Math.random = () => 0.5;
/** @param {any} array */
const sevens = (array) => array.fill(7);
crypto.getRandomValues = sevens;
nodeCrypto.randomFillSync = sevens;

const { loadPyodide } = await import(pathToFileURL(`${bundle}/${listing.files.loader.name}`).href);
const python = await loadPyodide({
  _makeSnapshot: true,
  _sysExecutable: "python",
  env: listing.environment,
  indexURL: bundle,
  stdLibURL: `${bundle}/${listing.files.library.name}`,
  lockFileContents: listing.lock,
});
// Not through loadPackage: what that keeps on the JavaScript side cannot be put into a snapshot.
for (const name of Object.keys(listing.lock.packages)) {
  python.unpackArchive(new Uint8Array(await readFile(`${bundle}/${listing.files[name].name}`)), "wheel");
}
python.runPython(await readFile(new URL("./snapshot.py", import.meta.url), "utf8"), {
  globals: python.globals.get("dict")(),
});
await writeFile(target, python.makeMemorySnapshot());
