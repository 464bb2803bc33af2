/**
 * What is kept stands in two places that fail differently: the browser's database, which is read, and a journal of all
 * changes. A change is written into the journal first, then into the database together with how much of the journal the
 * database has; kept means in both. So the journal never has less, and what either lost comes back from the other.
 */
import * as journal from "./journal.js";

/**
 * @import { Database, Deed, Hand, Key, Memory, StoreName } from "./row-stores.js"
 *
 * @typedef {object} Mark what of the journal the database has
 * @property {string} file empty: the journal could not be written on, and the database has more
 * @property {string} id of what stands in the file
 * @property {number} number of the file: one more than of the file before
 * @property {number} end up to here [bytes]
 * @property {number} began how long the file was when it was begun [bytes]
 * @property {boolean} [isComing] the database is only just being filled from it
 *
 * @typedef {{at: string, documents: Record<string, number> | null}} Restored when the database was found lost, and how
 *   many documents of each kind came back; null: there was nothing they could come back from
 */

const MARK = "mark";
const RESTORED = "restored";
const FALLEN_BEHIND = { file: "", id: "", number: 0, end: 0, began: 0 };
/**
 * Two files take turns, and neither is ever taken out: the browser's list of them is written once, and what is written
 * into it later may be lost after a kill, as in its database. 1: the form of the records; another has other files.
 */
const FILES = ["changes-1.a", "changes-1.b"];
const TRIES = 3;
const HEAD = 200; // [bytes] more than the first record of a file
const REST = 60_000; // [ms] a journal that could not be written on is left alone for so long
const AT_ONCE = 500; // records done in one go
const LARGE = 8_000_000; // [bytes] a journal that has doubled is begun anew, once it is larger than this

export class TwoStores {
  #isCompared = false;
  #failed = -REST; // when the journal could not be written on [ms]
  /** @type {Restored | null} */
  #found = null;

  /**
   * @param {Database | Memory} first
   * @param {object} how
   * @param {string} how.name of the lock under which all windows write
   * @param {boolean} how.isSecond whether there is to be a journal
   * @param {boolean} how.isLost whether the browser says that it threw the database away
   * @param {ReturnType<typeof sizesNow>} how.sizes
   * @param {() => string} how.now
   * @param {(deeds: Deed[]) => void} how.tell hears what came out of the journal
   */
  constructor(first, { name, isSecond, isLost, sizes, now, tell }) {
    this.first = first;
    this.name = name;
    this.now = now;
    this.tell = tell;
    this.hasJournal = isSecond && navigator.locks ? journal.isThere() : Promise.resolve(false);
    /** @type {Promise<unknown>} */
    this.readable = this.#begin(isLost, sizes).catch(() => {}); // then with what is there
  }

  /**
   * What the journal alone has is in the database before anything is read: all of it where the database has no mark,
   * being new or lost, else the end, which a window that was broken off could not put down.
   * @param {boolean} isLost @param {ReturnType<typeof sizesNow>} sizes
   */
  async #begin(isLost, sizes) {
    const [mark, there] = await Promise.all([this.#mark(), sizes]);
    if (!(await this.hasJournal)) return isLost && this.#note(null);
    const isBehind = mark ? mark.isComing || (there.get(mark.file) ?? 0) > mark.end : there.size > 0;
    if (isBehind) return this.#alone(() => this.#compareOnce());
    if (isLost) await this.#note(null);
    soon(() => this.#alone(() => this.#compareOnce()));
  }

  /** @param {StoreName} store @param {Key} start */
  async rows(store, start) {
    await this.readable;
    return this.first.rows(store, start);
  }

  /** @param {StoreName} store @param {Key} start */
  async keys(store, start) {
    await this.readable;
    return this.first.keys(store, start);
  }

  /** @param {StoreName} store @param {Key} key */
  async get(store, key) {
    await this.readable;
    return this.first.get(store, key);
  }

  /** What this opening found lost, and brought back. */
  async found() {
    await this.readable;
    return this.#found;
  }

  /** As `found`, of the last time that there was something to be found. @returns {Promise<Restored | undefined>} */
  async foundLast() {
    return (await this.get("journal", [RESTORED]))?.what;
  }

  /** Whether the journal has everything that the database has. */
  async isInBoth() {
    await this.readable;
    return Boolean((await this.#mark())?.file);
  }

  /**
   * Change a store in one go: all of it happens or nothing, and when this returns it is kept, in both places where
   * there are two.
   * @param {StoreName} store @param {(hand: Hand) => unknown} act
   */
  async change(store, act) {
    await this.readable;
    if (!(await this.hasJournal)) return this.first.change(store, act);
    return this.#alone(async () => {
      await this.#compareOnce().catch(() => {});
      const { deeds, result } = await this.#planned(store, act);
      if (deeds.length) await this.#keep(deeds);
      return result;
    });
  }

  /** @template T @param {() => Promise<T>} act @returns {Promise<T>} */
  async #alone(act) {
    return navigator.locks.request(this.name, act);
  }

  /**
   * What a change would do. Nobody else writes meanwhile.
   * @param {StoreName} store @param {(hand: Hand) => unknown} act
   */
  async #planned(store, act) {
    /** @type {Deed[]} */
    const deeds = [];
    const result = await act({
      keys: (start) => this.first.keys(store, start),
      put: (row) => deeds.push({ put: store, row }),
      cut: (start, upTo) => deeds.push({ cut: store, start, upTo: Math.min(upTo, Number.MAX_SAFE_INTEGER) }),
    });
    return { deeds, result };
  }

  /** @param {Deed[]} deeds */
  async #keep(deeds) {
    const mark = await this.#written(deeds);
    try {
      await this.first.apply([...deeds, noted(MARK, mark ?? FALLEN_BEHIND)]);
    } catch (problem) {
      if (mark) await journal.cut(mark.file, mark.start).catch(() => {}); // else it would come back unasked
      throw problem;
    }
    if (mark && mark.end > LARGE && mark.end > 2 * mark.began) soon(() => this.#alone(() => this.#shorten()));
  }

  /**
   * Write a change into the journal. Returns null when it cannot be: the database then keeps it alone.
   * @param {Deed[]} deeds @returns {Promise<Mark & {start: number} | null>}
   */
  async #written(deeds) {
    if (performance.now() - this.#failed < REST) return null;
    try {
      for (let tries = 0; tries < TRIES; tries++) {
        const mark = await this.#mark();
        if (mark?.file) {
          const { start, end } = await journal.appendAt(mark.file, mark.end, [deeds]).catch(isNotThere);
          if (start === mark.end && end > start) return { ...mark, start, end };
        }
        await this.#compare();
        if (!(await this.#mark())?.file) await this.#beginFile();
      }
    } catch (problem) {
      console.warn(`The journal could not be written on: ${problem.name}: ${problem.message}`);
    }
    this.#failed = performance.now();
    return null;
  }

  /** @returns {Promise<Mark | undefined>} */
  async #mark() {
    return (await this.first.get("journal", [MARK]))?.what;
  }

  async #compareOnce() {
    if (this.#isCompared) return;
    await this.#compare();
    this.#isCompared = true;
  }

  /** Each gets what it lacks and the other has. */
  async #compare() {
    const mark = await this.#mark();
    if (mark && !mark.file) return this.#beginFile();
    if (mark && (await headOf(mark.file))?.id === mark.id) {
      if ((await journal.sizeOf(mark.file)) < mark.end) return this.#beginFile(); // it has lost its end
      return this.#takeOver(mark);
    }
    const hasSome = Boolean(mark) || (await isAny(this.first));
    const newest = await newestWhole(mark?.number);
    if (newest) await this.#takeOver({ ...newest, end: 0, began: 0, isComing: true });
    if (hasSome) await this.#beginFile();
  }

  /** Do what stands in a file of the journal and is not done yet. @param {Mark} mark */
  async #takeOver({ isComing = false, ...mark }) {
    /** @type {Map<string, Deed>} */
    const done = new Map();
    for await (const { records, end } of journal.pieces(mark.file, mark.end)) {
      for (let at = 0; at < records.length; at += AT_ONCE) {
        const deeds = records.slice(at, at + AT_ONCE).flatMap((record) => (Array.isArray(record) ? record : []));
        const isLast = at + AT_ONCE >= records.length;
        await this.first.apply(isLast ? [...deeds, noted(MARK, { ...mark, end, isComing })] : deeds);
        for (const deed of deeds) done.set(JSON.stringify(documentOf(deed)), deed);
      }
      mark.end = end;
    }
    if (isComing) {
      await this.first.apply([noted(MARK, { ...mark, began: mark.end })]);
      await this.#note(await counted(this.first));
    }
    if (done.size) this.tell([...done.values()]);
  }

  /** @param {Restored["documents"]} documents */
  async #note(documents) {
    if (!this.first.isDatabase || (documents && !Object.keys(documents).length)) return;
    this.#found = { at: this.now(), documents };
    await this.first.apply([noted(RESTORED, this.#found)]);
  }

  /** Begin the journal anew with everything there is; until the mark names it, the file before counts. */
  async #beginFile() {
    const heads = await Promise.all(FILES.map(headOf));
    const inUse = (await this.#mark())?.file || (await newestWhole())?.file || FILES[1];
    const [file] = FILES.filter((each) => each !== inUse);
    const number = 1 + Math.max(...heads.map((head) => head?.number ?? 0));
    const id = crypto.randomUUID();
    let { end } = await journal.write(file, [{ id, number }]);
    for await (const deeds of this.first.everything()) ({ end } = await journal.append(file, deeds));
    ({ end } = await journal.append(file, [])); // by its empty record a whole one is known
    await this.first.apply([noted(MARK, { file, id, number, end, began: end })]);
    if (this.first.isDatabase) await journal.write(inUse, []); // else the database may still count on it
  }

  async #shorten() {
    const mark = await this.#mark();
    if (!this.first.isDatabase || !mark || mark.end < LARGE || mark.end < 2 * mark.began) return;
    await this.#compare();
    await this.#beginFile();
  }
}

/** How long each file of the journal is that has something. */
export async function sizesNow() {
  const sizes = await Promise.all(FILES.map(async (file) => /** @type {const} */ ([file, await journal.sizeOf(file)])));
  return new Map(sizes.filter(([, size]) => size));
}

/** @param {string} file @returns {Promise<{id: string, number: number} | undefined>} */
const headOf = async (file) => (await journal.read(file, 0, HEAD)).records[0];

/** The newest file that was begun to its end, else simply the newest. @param {number} [than] newer than this one */
async function newestWhole(than = 0) {
  const all = await Promise.all(FILES.map(async (file) => ({ file, ...(await headOf(file)) })));
  const some = all.flatMap(({ file, id, number }) => (id && number && number > than ? [{ file, id, number }] : []));
  some.sort((one, other) => other.number - one.number);
  if (some.length > 1)
    for (const each of some)
      for await (const { records } of journal.pieces(each.file))
        if (records.some((record) => record.length === 0)) return each;
  return some.at(0);
}

/** @param {string} name @param {Mark | Restored} what @returns {Deed} */
const noted = (name, what) => ({ put: "journal", row: { name, what } });

/** Of which document a deed is. @param {Deed} deed @returns {Key} */
export const documentOf = (deed) =>
  "put" in deed
    ? [deed.put, ...(deed.put === "versions" ? [deed.row.kind, deed.row.id] : [deed.row.name])]
    : [deed.cut, ...deed.start];

/** @param {Database | Memory} first */
async function isAny(first) {
  for await (const deeds of first.everything()) if (deeds.length) return true;
  return false;
}

/** How many documents of each kind there are. @param {Database | Memory} first */
async function counted(first) {
  /** @type {Record<string, number>} */
  const found = {};
  const names = (await first.keys("versions", [])).map(([kind, id]) => JSON.stringify([kind, id]));
  for (const name of new Set(names)) {
    const [kind] = JSON.parse(name);
    found[kind] = (found[kind] ?? 0) + 1;
  }
  return found;
}

/** @param {Error} problem */
function isNotThere(problem) {
  if (problem.name !== "NotFoundError") throw problem;
  return { start: 0, end: 0 };
}

/** Do it when the page has nothing else to do. @param {() => Promise<unknown>} act */
function soon(act) {
  const begin = () => void act().catch(() => {});
  if ("requestIdleCallback" in globalThis) requestIdleCallback(begin, { timeout: 3000 });
  else setTimeout(begin, 1000);
}
