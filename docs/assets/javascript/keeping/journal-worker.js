/**
 * Writes the files of the journal, one thing after another. Only a worker may write so that it knows what is on the
 * disk when it goes on.
 *
 * @import { Asked } from "./journal.js"
 */
import { folderOf, found, written } from "./journal-format.js";

const TRIES = 60;
const PAUSE = 50; // [ms] another window, or one that is just being closed, may still have the file in hand

/** @type {Map<string, number>} */
const left = new Map(); // file → how long it was when this worker left it, whole

/** @param {Asked} asked */
async function answer({ does, place, file, records, from, only }) {
  const root = await navigator.storage.getDirectory();
  const folder = await root.getDirectoryHandle(folderOf(place), { create: !only });
  const handle = await opened(await folder.getFileHandle(file, { create: !only }));
  try {
    if (does === "write") return put(handle, file, 0, records);
    if (does === "cut") return cut(handle, file, from);
    const end = wholeUpTo(handle, file, from);
    return only && end !== from ? { start: end, end } : put(handle, file, end, records);
  } finally {
    handle.close();
  }
}

/** @param {FileSystemFileHandle} handle @returns {Promise<FileSystemSyncAccessHandle>} */
async function opened(handle) {
  for (let tries = 1; ; tries++) {
    try {
      return await handle.createSyncAccessHandle();
    } catch (problem) {
      if (problem.name !== "NoModificationAllowedError" || tries === TRIES) throw problem;
      await new Promise((resolve) => setTimeout(resolve, PAUSE));
    }
  }
}

/**
 * Where the last whole record ends; what lies behind it is cut off.
 * @param {FileSystemSyncAccessHandle} handle @param {string} file @param {number} from known to be whole up to here
 */
function wholeUpTo(handle, file, from) {
  const size = handle.getSize();
  if (size <= from || size === left.get(file)) return size;
  const bytes = new Uint8Array(size - from);
  handle.read(bytes, { at: from });
  const end = from + found(bytes).end;
  if (end < size) handle.truncate(end);
  return end;
}

/** @param {FileSystemSyncAccessHandle} handle @param {string} file @param {number} at @param {unknown[]} records */
function put(handle, file, at, records) {
  const bytes = written(records);
  left.delete(file);
  try {
    if (handle.write(bytes, { at }) < bytes.length) throw new DOMException("no room", "QuotaExceededError");
    handle.truncate(at + bytes.length);
    handle.flush();
  } catch (problem) {
    handle.truncate(at);
    throw problem;
  }
  left.set(file, at + bytes.length);
  return { start: at, end: at + bytes.length };
}

/** @param {FileSystemSyncAccessHandle} handle @param {string} file @param {number} to */
function cut(handle, file, to) {
  left.delete(file);
  handle.truncate(to);
  handle.flush();
  return { start: to, end: to };
}

/** @type {Promise<void>} */
let last = Promise.resolve();

self.onmessage = (/** @type {MessageEvent<Asked>} */ { data }) => {
  last = last.then(async () => {
    try {
      postMessage({ id: data.id, done: await answer(data) });
    } catch ({ name, message }) {
      postMessage({ id: data.id, problem: { name, message } });
    }
  });
};
