/**
 * Files that are only ever written on at the end, in the browser's private file system: a second place for what is
 * kept, which does not fail when the browser's database does. A worker writes them, started at the first thing written.
 */
import { KEPT_UNDER, SITE } from "../site.js";
import { folderOf, found } from "./journal-format.js";

const SILENCE = 20_000; // [ms] without an answer before the worker is given up
const TRIES = 5;
const PIECE = 4_000_000; // [bytes] read at once

/**
 * @typedef {{id: number, place: string, does: "append" | "write" | "cut", file: string, records: unknown[],
 *   from: number, only: boolean, isOwn: boolean}} Asked `only`: a file that is there and ends at `from`; `isOwn`: no
 *   other open window writes it
 * @typedef {{start: number, end: number}} Written where the records stand in the file [bytes]
 */

/** @type {Worker | null} */
let worker = null;
let lastId = 0;
let isAbsent = false; // the worker has found that it may not write so
let isFound = false;
/** @type {Map<number, {resolve: (done: Written) => void, reject: (problem: Error) => void}>} */
const waiting = new Map();

/** @returns {Promise<FileSystemDirectoryHandle | null>} the folder, if there is one yet */
async function folder() {
  try {
    const root = await navigator.storage.getDirectory();
    return await root.getDirectoryHandle(folderOf(KEPT_UNDER));
  } catch {
    return null;
  }
}

/** Whether this browser has a private file system for this site. Starts nothing. */
export async function isThere() {
  if (isAbsent || !navigator.storage?.getDirectory) return false;
  isFound ||= await navigator.storage.getDirectory().then(
    () => true,
    () => false,
  );
  return isFound;
}

/**
 * Write records behind what stands in a file; a piece that a broken-off browser left at its end is cut off first. When
 * this returns, they are on the disk.
 * @param {string} file @param {unknown[]} records
 */
export const append = (file, ...records) => ask("append", file, records);

/**
 * As `append`, and sooner, into a file that no other open window writes: it stays open while this window writes.
 * Without records it is only opened.
 * @param {string} file @param {unknown[]} records
 */
export const appendOwn = (file, ...records) => ask("append", file, records, { isOwn: true });

/**
 * As `append`, but only if the file is there and its last whole record ends at `from`; else nothing is written, and
 * `start` says where it ends.
 * @param {string} file @param {number} from @param {unknown[]} records
 */
export const appendAt = (file, from, records) => ask("append", file, records, { from, only: true });

/**
 * Write a file anew. Not safe against being broken off: for a name not used yet, or for what is kept elsewhere too.
 * @param {string} file @param {unknown[]} records
 */
export const write = (file, records) => ask("write", file, records);

/** Take back what was appended last. @param {string} file @param {number} to */
export const cut = (file, to) => ask("cut", file, [], { from: to, only: true });

/**
 * The whole records of a file and where they end; none if there is no such file. Changes nothing, starts nothing.
 * @param {string} file
 * @param {number} [from] where a record begins
 * @param {number} [to] no further than this
 * @returns {Promise<{records: any[], end: number}>}
 */
export async function read(file, from = 0, to = Infinity) {
  if (to < Infinity) return found(await bytesOf(file, from, to));
  const all = { records: /** @type {any[]} */ ([]), end: from };
  for await (const { records, end } of pieces(file, from)) {
    for (const record of records) all.records.push(record);
    all.end = end;
  }
  return all;
}

/**
 * As `read`, a piece at a time, so that a large file is never in memory as a whole.
 * @param {string} file @param {number} [from]
 * @returns {AsyncGenerator<{records: any[], end: number}>}
 */
export async function* pieces(file, from = 0) {
  for (let [at, length] = [from, PIECE]; ; ) {
    const bytes = await bytesOf(file, at, at + length);
    const { records, end } = found(bytes);
    at += end;
    if (end) yield { records, end: at };
    if (bytes.length < length) return;
    length = end ? PIECE : 2 * length; // a record that is longer than a piece
  }
}

/** @param {string} file @param {number} from @param {number} to */
async function bytesOf(file, from, to) {
  for (let tries = 1; ; tries++) {
    const content = await fileNamed(file);
    try {
      return new Uint8Array(content ? await content.slice(from, to).arrayBuffer() : new ArrayBuffer());
    } catch (problem) {
      if (tries === TRIES) throw problem; // else it was being written on
    }
  }
}

/** How long a file is [bytes], with what may not be whole at its end; 0 if it is not there. @param {string} file */
export const sizeOf = async (file) => (await fileNamed(file))?.size ?? 0;

/** @param {string} file @returns {Promise<File | undefined>} */
async function fileNamed(file) {
  try {
    return await (await (await folder())?.getFileHandle(file))?.getFile();
  } catch (problem) {
    if (problem.name === "NotFoundError") return undefined;
    throw problem;
  }
}

/** The names of all files there are, in order. */
export async function files() {
  const names = [];
  for await (const name of (await folder())?.keys() ?? []) names.push(name);
  return names.sort();
}

/** @param {string} file */
export async function remove(file) {
  await (await folder())?.removeEntry(file).catch((problem) => {
    if (problem.name !== "NotFoundError") throw problem;
  });
}

/**
 * @param {Asked["does"]} does @param {string} file @param {unknown[]} records
 * @param {Partial<Pick<Asked, "from" | "only" | "isOwn">>} [how]
 * @returns {Promise<Written>}
 */
function ask(does, file, records, { from = 0, only = false, isOwn = false } = {}) {
  if (isAbsent || !navigator.storage?.getDirectory) return Promise.reject(new Error("no private file system"));
  return new Promise((resolve, reject) => {
    const id = ++lastId;
    const watch = setTimeout(() => end(new Error("no answer")), SILENCE);
    /** @param {Error} problem */
    const end = (problem) => {
      clearTimeout(watch);
      waiting.delete(id);
      reject(problem);
    };
    waiting.set(id, {
      resolve: (done) => {
        clearTimeout(watch);
        waiting.delete(id);
        resolve(done);
      },
      reject: end,
    });
    worker ??= started();
    worker.postMessage({ id, place: KEPT_UNDER, does, file, records, from, only, isOwn });
  });
}

function started() {
  const made = new Worker(new URL("assets/javascript/journal-worker.js", SITE), { type: "module", name: "journal" });
  made.onmessage = ({ data: { id, done, problem } }) => {
    if (problem?.name === "TypeError" && /createSyncAccessHandle/.test(problem.message)) isAbsent = true;
    if (problem) waiting.get(id)?.reject(Object.assign(new Error(problem.message), { name: problem.name }));
    else waiting.get(id)?.resolve(done);
  };
  made.onerror = (event) => {
    event.preventDefault();
    made.terminate();
    worker = null;
    for (const { reject } of [...waiting.values()]) reject(new Error(event.message || "the worker did not load"));
  };
  return made;
}

addEventListener("pagehide", () => worker?.postMessage({ isShown: false }));
addEventListener("pageshow", () => worker?.postMessage({ isShown: true }));
