/** Where rows are put down: the browser's database, or the page's own memory where that cannot be had. */
import { safeToWrite } from "./after-a-kill.js";

/**
 * @typedef {"versions" | "marks" | "choices" | "journal"} StoreName
 * @typedef {(string | number)[]} Key
 * @typedef {Record<string, any>} Row
 *
 * What a change of a store is made with: keys that begin with these parts, a row put, rows cut up to a last part.
 * @typedef {object} Hand
 * @property {(start: Key) => Promise<any[]>} keys
 * @property {(row: Row) => unknown} put
 * @property {(start: Key, upTo: number) => unknown} cut
 *
 * One thing done to a store, as it can be written down.
 * @typedef {{put: StoreName, row: Row} | {cut: StoreName, start: Key, upTo: number}} Deed
 */

/**
 * Each store and the parts of its key. What the journal has of all this is noted in a store of its own.
 * @type {Record<StoreName, string[]>}
 */
const STORES = {
  versions: ["kind", "id", "revision"],
  marks: ["job", "name"],
  choices: ["name"],
  journal: ["name"],
};
const ALL = /** @type {StoreName[]} */ (Object.keys(STORES));
const OF_THE_READER = ALL.filter((store) => store !== "journal");

const PATIENCE = 20_000; // [ms] for what ought to take a few
const SHORT = 5_000; // [ms] the same for one row of ours, and once the database has been silent
const WRITING = 60_000; // [ms]
const EACH = 20; // [ms] more for each row of many
const AT_ONCE = 100; // rows taken out of the database in one go

export const SILENT =
  "This browser does not answer when it is asked for what is kept here. Nothing is deleted: close the browser, " +
  "open it again and load this page.";

/** The browser's database says nothing. */
export class Silent extends Error {
  name = "Silent";

  constructor() {
    super(SILENT);
  }
}

/** @template T @param {Promise<T>} promise @param {number} patience [ms] @returns {Promise<T>} */
export function answered(promise, patience) {
  let late = 0;
  const silence = new Promise((_, reject) => {
    late = setTimeout(() => reject(new Silent()), patience);
  });
  return /** @type {Promise<T>} */ (Promise.race([promise, silence])).finally(() => clearTimeout(late));
}

/** Make those that an older handbook has not made. @param {import("idb").IDBPDatabase} database */
export function makeStores(database) {
  for (const [store, keyPath] of Object.entries(STORES))
    if (!database.objectStoreNames.contains(store)) database.createObjectStore(store, { keyPath });
}

export class Database {
  isDatabase = true;
  isSilent = false;

  /** @param {import("idb").IDBPDatabase} database */
  constructor(database) {
    this.database = database;
    this.safe = safeToWrite();
  }

  /**
   * The rows whose key begins with these parts, in order.
   * @param {StoreName} store @param {Key} start
   */
  rows(store, start) {
    return this.#answered(this.database.getAll(store, beginning(start)));
  }

  /** @param {StoreName} store @param {Key} start @returns {Promise<any[]>} */
  keys(store, start) {
    return this.#answered(this.database.getAllKeys(store, beginning(start)));
  }

  /** @param {StoreName} store @param {Key} key */
  get(store, key) {
    return this.#answered(this.database.get(store, key), store === "journal");
  }

  /** @template T @param {Promise<T>} promise @param {boolean} [isShort] */
  async #answered(promise, isShort = false) {
    try {
      const answer = await answered(promise, isShort || this.isSilent ? SHORT : PATIENCE);
      this.isSilent = false;
      return answer;
    } catch (problem) {
      this.isSilent ||= problem instanceof Silent;
      throw problem;
    }
  }

  /** Everything of the reader's, a piece at a time. @returns {AsyncGenerator<Deed[]>} */
  async *everything() {
    for (const store of OF_THE_READER) {
      const keys = await this.keys(store, []);
      for (let at = 0; at < keys.length; at += AT_ONCE) {
        const range = IDBKeyRange.bound(keys[at], keys[Math.min(at + AT_ONCE, keys.length) - 1]);
        const rows = await this.#answered(this.database.getAll(store, range));
        yield rows.map((row) => ({ put: store, row }));
      }
    }
  }

  /**
   * Change a store in one go: all of it happens or nothing, and when this returns it is on the disk.
   * @param {StoreName} store @param {(hand: Hand) => unknown} act
   */
  change(store, act) {
    return this.#inOneGo([store], WRITING, (transaction) => act(handOf(transaction.objectStore(store))));
  }

  /** Do what was written down, in one go. @param {Deed[]} deeds */
  apply(deeds) {
    const stores = [...new Set(deeds.map(storeOf))];
    return this.#inOneGo(stores, PATIENCE + EACH * deeds.length, (transaction) => {
      for (const deed of deeds) doIt(deed, (store) => handOf(transaction.objectStore(store)));
    });
  }

  /**
   * @template T
   * @param {StoreName[]} stores @param {number} patience [ms]
   * @param {(transaction: import("idb").IDBPTransaction<unknown, StoreName[], "readwrite">) => T} act
   */
  async #inOneGo(stores, patience, act) {
    await this.safe;
    const transaction = this.database.transaction(stores, "readwrite", { durability: "strict" });
    const failed = transaction.done.then(
      () => null,
      (problem) => problem ?? new Error("broken off"),
    );
    const late = setTimeout(() => abort(transaction), patience);
    try {
      const result = await act(transaction);
      const problem = await failed;
      if (problem) throw problem;
      return result;
    } catch (problem) {
      abort(transaction);
      await failed;
      throw problem;
    } finally {
      clearTimeout(late);
    }
  }
}

/** @param {{abort: () => void}} transaction */
function abort(transaction) {
  try {
    transaction.abort();
  } catch {
    // it has ended already
  }
}

/** @param {import("idb").IDBPObjectStore<unknown, StoreName[], StoreName, "readwrite">} store @returns {Hand} */
const handOf = (store) => ({
  keys: (start) => store.getAllKeys(beginning(start)),
  put: (row) => store.put(row),
  cut: (start, upTo) => store.delete(IDBKeyRange.bound([...start, 0], [...start, upTo])),
});

/** @param {Deed} deed */
const storeOf = (deed) => ("put" in deed ? deed.put : deed.cut);

/** @param {Deed} deed @param {(store: StoreName) => Hand} hand */
function doIt(deed, hand) {
  if ("put" in deed) hand(deed.put).put(deed.row);
  else hand(deed.cut).cut(deed.start, deed.upTo);
}

export class Memory {
  isDatabase = false;
  isSilent = false;
  /** @type {Record<string, Map<string, {key: Key, row: Row}>>} */
  #stores = Object.fromEntries(ALL.map((store) => [store, new Map()]));

  /** @param {StoreName} store @param {Key} start @returns {Promise<any[]>} */
  async rows(store, start) {
    return this.#under(store, start).map(({ row }) => row);
  }

  /** @param {StoreName} store @param {Key} start @returns {Promise<any[]>} */
  async keys(store, start) {
    return this.#under(store, start).map(({ key }) => key);
  }

  /** @param {StoreName} store @param {Key} key @returns {Promise<any>} */
  async get(store, key) {
    return this.#stores[store].get(JSON.stringify(key))?.row;
  }

  /** @returns {AsyncGenerator<Deed[]>} */
  async *everything() {
    for (const store of OF_THE_READER) yield (await this.rows(store, [])).map((row) => ({ put: store, row }));
  }

  /** @param {StoreName} store @param {(hand: Hand) => unknown} act */
  async change(store, act) {
    return act(this.#hand(store));
  }

  /** @param {Deed[]} deeds */
  async apply(deeds) {
    for (const deed of deeds) doIt(deed, (store) => this.#hand(store));
  }

  /** @param {StoreName} store @returns {Hand} */
  #hand(store) {
    return {
      keys: (start) => this.keys(store, start),
      put: (row) => {
        const key = STORES[store].map((part) => row[part]);
        this.#stores[store].set(JSON.stringify(key), { key, row });
      },
      cut: (start, upTo) => {
        for (const { key } of this.#under(store, start))
          if (Number(key.at(-1)) <= upTo) this.#stores[store].delete(JSON.stringify(key));
      },
    };
  }

  /** @param {StoreName} store @param {Key} start */
  #under(store, start) {
    return [...this.#stores[store].values()]
      .filter(({ key }) => start.every((part, at) => key[at] === part))
      .sort((one, other) => inOrder(one.key, other.key));
  }
}

/** @param {Key} one @param {Key} other */
function inOrder(one, other) {
  const at = one.findIndex((part, index) => part !== other[index]);
  return at < 0 ? 0 : one[at] < other[at] ? -1 : 1;
}

/** @param {Key} start */
const beginning = (start) => (start.length ? IDBKeyRange.bound(start, [...start, []]) : undefined);
