/**
 * Writes the files of the journal, one thing after another in each. Only a worker may write so that it knows what is on
 * the disk when it goes on.
 *
 * A file that is open can be written on by nobody else. So one that several windows write is opened for each thing
 * written; one that this window has to itself stays open, for opening takes longer than writing.
 *
 * @import { Asked } from "./journal.js"
 */
import { folderOf, found, written } from "./journal-format.js";

const TRIES = 150;
const PAUSE = 20; // [ms] another window, or one that is just being closed, may still have the file in hand
const IDLE = 30_000; // [ms] an open file can keep a reader from clearing what her browser keeps

let isShown = true; // else another window may have what was this one's

class JournalFile {
  /** @type {FileSystemSyncAccessHandle | null} */
  #handle = null;
  #whole = -1; // how long it was when it was left, whole
  #idle = 0;
  /** @type {Promise<unknown>} */
  #last = Promise.resolve();

  /** @param {Asked} asked */
  does(asked) {
    const done = this.#last.then(() => this.#does(asked));
    this.#last = done.catch(() => {});
    return done;
  }

  /** Close it, once what was asked for is done. */
  letGo() {
    this.#last = this.#last.then(() => this.#close());
  }

  /** @param {Asked} asked */
  async #does({ does, place, file, records, from, only, isOwn }) {
    clearTimeout(this.#idle);
    this.#handle ??= await opened(place, file, only);
    let isDone = false;
    try {
      const done = this.#done(this.#handle, does, records, from, only);
      isDone = true;
      return done;
    } finally {
      if (isDone && isOwn && isShown) this.#idle = setTimeout(() => this.letGo(), IDLE);
      else this.#close();
    }
  }

  /**
   * @param {FileSystemSyncAccessHandle} handle @param {Asked["does"]} does @param {unknown[]} records
   * @param {number} from @param {boolean} only
   */
  #done(handle, does, records, from, only) {
    if (does === "write") return this.#put(handle, 0, records);
    if (does === "cut") return this.#cut(handle, from);
    const end = this.#wholeUpTo(handle, from);
    return !records.length || (only && end !== from) ? { start: end, end } : this.#put(handle, end, records);
  }

  #close() {
    clearTimeout(this.#idle);
    this.#handle?.close();
    this.#handle = null;
  }

  /**
   * Where the last whole record ends; what lies behind it is cut off.
   * @param {FileSystemSyncAccessHandle} handle @param {number} from known to be whole up to here
   */
  #wholeUpTo(handle, from) {
    const size = handle.getSize();
    if (size <= from || size === this.#whole) return size;
    const bytes = new Uint8Array(size - from);
    handle.read(bytes, { at: from });
    const end = from + found(bytes).end;
    if (end < size) handle.truncate(end);
    return end;
  }

  /** @param {FileSystemSyncAccessHandle} handle @param {number} at @param {unknown[]} records */
  #put(handle, at, records) {
    const bytes = written(records);
    this.#whole = -1;
    try {
      if (handle.write(bytes, { at }) < bytes.length) throw new DOMException("no room", "QuotaExceededError");
      handle.truncate(at + bytes.length);
      handle.flush();
    } catch (problem) {
      handle.truncate(at);
      throw problem;
    }
    this.#whole = at + bytes.length;
    return { start: at, end: at + bytes.length };
  }

  /** @param {FileSystemSyncAccessHandle} handle @param {number} to */
  #cut(handle, to) {
    this.#whole = -1;
    handle.truncate(to);
    handle.flush();
    return { start: to, end: to };
  }
}

/**
 * @param {string} place @param {string} file @param {boolean} only if it is there
 * @returns {Promise<FileSystemSyncAccessHandle>}
 */
async function opened(place, file, only) {
  const root = await navigator.storage.getDirectory();
  const folder = await root.getDirectoryHandle(folderOf(place), { create: !only });
  const handle = await folder.getFileHandle(file, { create: !only });
  for (let tries = 1; ; tries++) {
    try {
      return await handle.createSyncAccessHandle();
    } catch (problem) {
      if (problem.name !== "NoModificationAllowedError" || tries === TRIES) throw problem;
      await new Promise((resolve) => setTimeout(resolve, PAUSE));
    }
  }
}

/** @type {Map<string, JournalFile>} */
const files = new Map();

/** @param {MessageEvent<Asked | {isShown: boolean}>} event */
self.onmessage = async ({ data }) => {
  if ("isShown" in data) {
    isShown = data.isShown;
    if (!isShown) for (const each of files.values()) each.letGo();
    return;
  }
  const { id, file } = data;
  const named = files.get(file) ?? new JournalFile();
  files.set(file, named);
  try {
    postMessage({ id, done: await named.does(data) });
  } catch ({ name, message }) {
    postMessage({ id, problem: { name, message } });
  }
};
