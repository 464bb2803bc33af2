/** What is kept, opened once: the browser's database and its journal, or what can be had of the two. */
import { openDB } from "idb";
import { KEPT_UNDER } from "../site.js";
import { now } from "./clock.js";
import { answered, Database, Memory, makeStores, Silent } from "./row-stores.js";
import { sizesNow, TwoStores } from "./two-stores.js";

const VERSION = 2;
export const NAME = `workroom${KEPT_UNDER}`;

const TRIES = 3;
const PAUSE = 300; // [ms]
const PATIENCE = 10_000; // [ms]

/**
 * @typedef {"" | "denied" | "newer" | "held" | "silent" | "broken"} Trouble why the database cannot be had: forbidden,
 *   of a newer handbook, an older one in another window does not let go, no answer, any other failure
 */

/** @type {Promise<TwoStores & {trouble: Trouble}> | null} */
let opening = null;
/** @type {(deeds: import("./row-stores.js").Deed[]) => void} */
let heard = () => {};

/** @param {typeof heard} callback hears what came out of the journal into the database */
export function onTakenOver(callback) {
  heard = callback;
}

export function database() {
  opening ??= open();
  return opening;
}

async function open() {
  const sizes = sizesNow(); // asked for beside the database, so that nobody waits for it
  const { first, trouble, isLost } = await opened(TRIES);
  const two = new TwoStores(first, {
    name: `${NAME} written on`,
    isSecond: trouble !== "denied" && trouble !== "newer",
    isLost,
    sizes,
    now,
    tell: (deeds) => heard(deeds),
  });
  return Object.assign(two, { trouble });
}

/** @param {number} tries @returns {Promise<{first: Database | Memory, trouble: Trouble, isLost: boolean}>} */
async function opened(tries) {
  let [isLost, isHeld, isLate] = [false, false, false];
  try {
    const database = openDB(NAME, VERSION, {
      upgrade(made, before, _to, _transaction, event) {
        isLost = !before && "dataLoss" in event && event.dataLoss !== "none"; // Chromium alone says so
        makeStores(made);
      },
      blocked: () => {
        isHeld = true;
      },
      blocking: letGo,
      terminated: forget,
    });
    database.then((opened) => isLate && opened.close()).catch(() => {});
    return { first: new Database(await answered(database, PATIENCE)), trouble: "", isLost };
  } catch (problem) {
    isLate = true;
    const trouble = isHeld ? "held" : troubleOf(problem);
    if (trouble !== "broken" || tries <= 1) return { first: new Memory(), trouble, isLost: false };
    await new Promise((resolve) => setTimeout(resolve, PAUSE)); // a browser that was broken off may not have let go yet
    return opened(tries - 1);
  }
}

/** @param {Error} problem @returns {Trouble} */
function troubleOf(problem) {
  const { name, message } = problem;
  if (name === "VersionError") return "newer";
  if (problem instanceof Silent) return "silent";
  if (name === "SecurityError" || name === "InvalidStateError" || /denied/i.test(message)) return "denied";
  return "broken";
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
