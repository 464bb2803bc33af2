/**
 * A browser that was killed may leave half a record at the end of its database's log. Chromium then opens the database
 * as if nothing were, writes on behind it, and the time after that finds the log broken and throws everything away.
 * So each page leaves a mark while it is open; who finds the mark of a page that is no longer there fills the log until
 * the browser begins another, and only then is anything kept.
 */
import { openDB } from "idb";
import { KEPT_UNDER } from "../site.js";

const NAME = `workroom open pages ${KEPT_UNDER}`; // the databases of a site share one log
const VERSION = 1;
const PIECES = 80; // fill more than the 4 MB at which a log is begun anew
const PIECE = 60_000; // [bytes] from 64 kB on it would lie beside the log
const PATIENCE = 5_000; // [ms] then things are kept all the same

/** Resolves once it is safe to write: at once, but after a kill. */
export async function safeToWrite() {
  if (!navigator.locks) return;
  let late = 0;
  const patience = new Promise((resolve) => {
    late = setTimeout(resolve, PATIENCE);
  });
  await Promise.race([markAndHeal().catch(() => {}), patience]);
  clearTimeout(late);
}

async function markAndHeal() {
  const mark = crypto.randomUUID();
  await held(mark);
  const database = await openDB(NAME, VERSION, {
    upgrade(made) {
      made.createObjectStore("marks");
      made.createObjectStore("filling", { autoIncrement: true });
    },
    blocking: () => database.close(),
  });
  const there = new Set((await navigator.locks.query()).held?.map(({ name }) => name));
  const marks = /** @type {string[]} */ (await database.getAllKeys("marks"));
  const left = marks.filter((each) => !there.has(lock(each)));
  const put = () => change(database, "marks", (store) => store.put(true, mark));
  const leave = () => change(database, "marks", (store) => store.delete(mark));
  await put();
  addEventListener("pagehide", () => void leave().catch(() => {}));
  addEventListener("pageshow", ({ persisted }) => void (persisted && put().catch(() => {})));
  if (!left.length) return;
  await change(database, "filling", (store) => {
    for (let piece = 0; piece < PIECES; piece++) store.put(crypto.getRandomValues(new Uint8Array(PIECE)));
  });
  await change(database, "filling", (store) => store.clear());
  await change(database, "marks", (store) => {
    for (const each of left) store.delete(each);
  });
}

/** @param {string} mark */
const lock = (mark) => `${NAME} ${mark}`;

/** Hold a lock of this name for as long as the page is there. @param {string} mark @returns {Promise<void>} */
function held(mark) {
  return new Promise((resolve) => {
    navigator.locks.request(lock(mark), () => {
      resolve();
      return new Promise(() => {});
    });
  });
}

/**
 * @param {import("idb").IDBPDatabase} database @param {string} name
 * @param {(store: import("idb").IDBPObjectStore<unknown, string[], string, "readwrite">) => void} act
 */
async function change(database, name, act) {
  const transaction = database.transaction(name, "readwrite", { durability: "strict" });
  act(transaction.store);
  transaction.commit();
  await transaction.done;
}
