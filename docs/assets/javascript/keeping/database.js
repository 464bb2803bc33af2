/** Where rows are put down: the browser's database, or the page's own memory where the browser keeps nothing. */
import { openDB } from "idb";
import { PLACE } from "../site.js";

const VERSION = 1;
/** Each store and the parts of its key. */
const STORES = { versions: ["kind", "id", "revision"], marks: ["job", "name"], choices: ["name"] };
export const NAME = `workroom${PLACE}`;

const TRIES = 3;
const PAUSE = 300; // [ms]

let opening = null;

/** The database, opened once. `trouble` is "" for the database, else why there is none: "denied" or "newer". */
export function database() {
  opening ??= open(TRIES);
  return opening;
}

async function open(tries) {
  try {
    return new Database(await openDB(NAME, VERSION, { upgrade, blocking: letGo, terminated: () => (opening = null) }));
  } catch (problem) {
    if (problem?.name === "VersionError") return new Memory("newer");
    if (tries <= 1) return new Memory("denied");
    await new Promise((resolve) => setTimeout(resolve, PAUSE)); // a browser that was broken off may not have let go yet
    return open(tries - 1);
  }
}

function upgrade(database) {
  for (const [store, keyPath] of Object.entries(STORES)) database.createObjectStore(store, { keyPath });
}

/** A newer handbook in another window wants to change how things are kept. */
function letGo(_from, _to, { target }) {
  target.close();
  opening = null;
}

class Database {
  trouble = "";

  constructor(database) {
    this.database = database;
  }

  /** The rows whose key begins with these parts, in order. */
  rows(store, start) {
    return this.database.getAll(store, beginning(start));
  }

  keys(store, start) {
    return this.database.getAllKeys(store, beginning(start));
  }

  get(store, key) {
    return this.database.get(store, key);
  }

  /** Change a store in one go: all of it happens or nothing, and when this returns it is on the disk. */
  async change(store, act) {
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
  #stores = Object.fromEntries(Object.keys(STORES).map((store) => [store, new Map()]));

  constructor(trouble) {
    this.trouble = trouble;
  }

  async rows(store, start) {
    return this.#under(store, start).map(({ row }) => row);
  }

  async keys(store, start) {
    return this.#under(store, start).map(({ key }) => key);
  }

  async get(store, key) {
    return this.#stores[store].get(JSON.stringify(key))?.row;
  }

  async change(store, act) {
    const put = (row) => {
      const key = STORES[store].map((part) => row[part]);
      this.#stores[store].set(JSON.stringify(key), { key, row });
    };
    const cut = (start, upTo) => {
      for (const { key } of this.#under(store, start))
        if (key.at(-1) <= upTo) this.#stores[store].delete(JSON.stringify(key));
    };
    return act({ keys: (start) => this.keys(store, start), put, cut });
  }

  #under(store, start) {
    return [...this.#stores[store].values()].filter(({ key }) => start.every((part, at) => key[at] === part));
  }
}

const beginning = (start) => (start.length ? IDBKeyRange.bound(start, [...start, []]) : undefined);
