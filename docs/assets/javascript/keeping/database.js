/** Where rows are put down: the browser's database, or the page's own memory where the browser keeps nothing. */
import { openDB } from "idb";
import { PLACE } from "../site.js";
import { safeToWrite } from "./after-a-kill.js";

const VERSION = 1;
/**
 * @typedef {"versions" | "marks" | "choices"} StoreName
 * @typedef {(string | number)[]} Key
 * @typedef {Record<string, any>} Row
 *
 * What a change of a store is made with: keys that begin with these parts, a row put, rows cut up to a last part.
 * @typedef {object} Hand
 * @property {(start: Key) => Promise<any[]>} keys
 * @property {(row: Row) => unknown} put
 * @property {(start: Key, upTo: number) => unknown} cut
 */

/**
 * Each store and the parts of its key.
 * @type {Record<StoreName, string[]>}
 */
const STORES = { versions: ["kind", "id", "revision"], marks: ["job", "name"], choices: ["name"] };
export const NAME = `workroom${PLACE}`;

const TRIES = 3;
const PAUSE = 300; // [ms]

/** @type {Promise<Database | Memory> | null} */
let opening = null;

/** The database, opened once. `trouble` is "" for the database, else why there is none: "denied" or "newer". */
export function database() {
  opening ??= open(TRIES);
  return opening;
}

/** @param {number} tries @returns {Promise<Database | Memory>} */
async function open(tries) {
  try {
    return new Database(await openDB(NAME, VERSION, { upgrade, blocking: letGo, terminated: forget }));
  } catch (problem) {
    if (problem?.name === "VersionError") return new Memory("newer");
    if (tries <= 1) return new Memory("denied");
    await new Promise((resolve) => setTimeout(resolve, PAUSE)); // a browser that was broken off may not have let go yet
    return open(tries - 1);
  }
}

/** @param {import("idb").IDBPDatabase} database */
function upgrade(database) {
  for (const [store, keyPath] of Object.entries(STORES)) database.createObjectStore(store, { keyPath });
}

function forget() {
  opening = null;
}

/**
 * A newer handbook in another window wants to change how things are kept.
 * @param {number} _from @param {number | null} _to @param {IDBVersionChangeEvent} event
 */
function letGo(_from, _to, { target }) {
  /** @type {IDBDatabase} */ (target).close();
  forget();
}

class Database {
  trouble = "";

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
    return this.database.getAll(store, beginning(start));
  }

  /** @param {StoreName} store @param {Key} start @returns {Promise<any[]>} */
  keys(store, start) {
    return this.database.getAllKeys(store, beginning(start));
  }

  /** @param {StoreName} store @param {Key} key */
  get(store, key) {
    return this.database.get(store, key);
  }

  /**
   * Change a store in one go: all of it happens or nothing, and when this returns it is on the disk.
   * @param {StoreName} store @param {(hand: Hand) => unknown} act
   */
  async change(store, act) {
    await this.safe;
    const transaction = this.database.transaction(store, "readwrite", { durability: "strict" });
    const failed = transaction.done.then(
      () => null,
      (problem) => problem ?? new Error("broken off"),
    );
    let result;
    try {
      result = await act({
        keys: (start) => transaction.store.getAllKeys(beginning(start)),
        put: (row) => transaction.store.put(row),
        cut: (start, upTo) => transaction.store.delete(IDBKeyRange.bound([...start, 0], [...start, upTo])),
      });
    } catch (problem) {
      transaction.abort();
      await failed;
      throw problem;
    }
    const problem = await failed;
    if (problem) throw problem;
    return result;
  }
}

class Memory {
  /** @type {Record<string, Map<string, {key: Key, row: Row}>>} */
  #stores = Object.fromEntries(Object.keys(STORES).map((store) => [store, new Map()]));

  /** @param {"denied" | "newer"} trouble */
  constructor(trouble) {
    this.trouble = trouble;
  }

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

  /** @param {StoreName} store @param {(hand: Hand) => unknown} act */
  async change(store, act) {
    /** @param {Row} row */
    const put = (row) => {
      const key = STORES[store].map((part) => row[part]);
      this.#stores[store].set(JSON.stringify(key), { key, row });
    };
    /** @param {Key} start @param {number} upTo */
    const cut = (start, upTo) => {
      for (const { key } of this.#under(store, start))
        if (Number(key.at(-1)) <= upTo) this.#stores[store].delete(JSON.stringify(key));
    };
    return act({ keys: (start) => this.keys(store, start), put, cut });
  }

  /** @param {StoreName} store @param {Key} start */
  #under(store, start) {
    return [...this.#stores[store].values()].filter(({ key }) => start.every((part, at) => key[at] === part));
  }
}

/** @param {Key} start */
const beginning = (start) => (start.length ? IDBKeyRange.bound(start, [...start, []]) : undefined);
