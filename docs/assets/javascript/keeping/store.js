/**
 * What this browser keeps: house methods, jobs, what was ticked and measured. Every change is a new record beside the
 * old ones, added whole or not at all, so that nothing is ever half-written and two windows cannot overwrite each
 * other.
 */
import { now } from "./clock.js";
import { database, NAME, onTakenOver } from "./database.js";
import { SILENT } from "./row-stores.js";
import { documentOf } from "./two-stores.js";

export { now };

const VERSIONS_KEPT = 200;
/**
 * @typedef {"method" | "job" | "loose" | "choice"} Kind
 * @typedef {{kind: string, id: string}} Change
 * @typedef {{kind: string, id: string, revision: number, at: string, text: string}} DocumentRecord
 */

const UNTIL_CLOSED = "What you change lasts until you close the page: save it as a file first.";
/** @type {Record<string, string>} */
const SENTENCES = {
  denied: `This browser keeps nothing for this site, as in a private window. ${UNTIL_CLOSED}`,
  newer:
    "What is kept here belongs to a newer handbook and is left as it is. Load this page again to get the newer one.",
  held: `Another window does not let go of what is kept here. Close it, then load this page again. ${UNTIL_CLOSED}`,
  silent: SILENT,
  broken: `This browser cannot open what is kept here; its disk may be full or damaged. ${UNTIL_CLOSED}`,
  second:
    "Of the two places where this browser keeps things, one cannot be opened. The other has everything: " +
    "save a copy of it today, under House, Share and keep safe.",
  gone:
    "This browser has thrown away whatever was kept here, and there is no second copy in it. " +
    "If you have saved a file, open it again.",
  full: "This browser has no room left, so this was not kept. It still stands on this page: save it as a file.",
  lost: "This could not be kept. It still stands on this page: save it as a file, then load the page again.",
};

/** Why something was not kept: `kind` for code, `message` one sentence for the reader. */
export class NotKept extends Error {
  /** @param {"full" | "lost"} kind */
  constructor(kind) {
    super(SENTENCES[kind]);
    this.name = "NotKept";
    this.kind = kind;
  }
}

/** Another window kept a newer record first. */
export class Overtaken extends Error {
  name = "Overtaken";
}

/** @type {Set<(change: Change) => void>} */
const listeners = new Set();
const others = new BroadcastChannel(NAME);
others.onmessage = ({ data }) => tell(data);

/** @param {Change} change */
function tell(change) {
  for (const listener of listeners) listener(change);
}

/** @param {Change} change */
function announce(change) {
  others.postMessage(change);
  tell(change);
}

/**
 * Hear of every change, in this window and in others.
 * @param {(change: Change) => void} callback
 * @returns {() => void} stops it
 */
export function onChange(callback) {
  listeners.add(callback);
  return () => listeners.delete(callback);
}

/** One sentence when what is kept does not last, or not as well as it should; else empty. */
export async function whyNothingLasts() {
  const { first, readable, trouble, hasJournal } = await database();
  await readable;
  if (first.isSilent) return SENTENCES.silent;
  const isCarried = trouble !== "denied" && trouble !== "newer" && (await hasJournal);
  return SENTENCES[trouble && isCarried ? "second" : trouble] ?? "";
}

/** @type {Record<string, [string, string]>} */
const NAMES = {
  job: ["job", "jobs"],
  method: ["house method", "house methods"],
  loose: ["ticket of no job", "tickets of no job"],
};

/** One sentence when this opening found that the browser had lost what is kept, else empty. */
export async function whatWasLost() {
  const found = await (await database()).found();
  if (!found?.documents) return found ? SENTENCES.gone : "";
  const counts = Object.entries(NAMES).flatMap(([kind, [one, many]]) => {
    const count = found.documents?.[kind] ?? 0;
    return count ? [`${count} ${count === 1 ? one : many}`] : [];
  });
  const all = [counts.slice(0, -1).join(", "), ...counts.slice(-1)].filter(Boolean).join(" and ");
  return `This browser had lost what was kept here. It is back, out of the second copy${all && `: ${all}`}.`;
}

/**
 * Which places hold what is kept here.
 * @returns {Promise<{database: boolean, journal: boolean, persisted: boolean, usage: number, trouble: string,
 *   restored: import("./two-stores.js").Restored | null}>} `persisted`: the browser has promised not to clear it away;
 *   `usage` of the whole site, with the handbook's own copy [bytes], 0 if it does not tell; `restored`: when it was
 *   found lost last, and how many documents of each kind came back, null for none
 */
export async function whatKeeps() {
  const two = await database();
  const { usage = 0 } = (await navigator.storage?.estimate?.().catch(() => null)) ?? {};
  return {
    database: two.first.isDatabase,
    journal: await two.isInBoth(),
    persisted: await isSafe(),
    usage,
    trouble: await whyNothingLasts(),
    restored: (await two.foundLast()) ?? null,
  };
}

onTakenOver((deeds) => {
  for (const [store, kind, id] of deeds.map(documentOf)) {
    if (store === "versions") announce({ kind: String(kind), id: String(id) });
    else if (store === "choices") announce({ kind: "choice", id: String(kind) });
  }
});

/** @param {import("./row-stores.js").StoreName} store @param {(hand: import("./row-stores.js").Hand) => unknown} act */
async function change(store, act) {
  try {
    return await (await database()).change(store, act);
  } catch (problem) {
    if (problem instanceof Overtaken) throw problem;
    throw new NotKept(problem?.name === "QuotaExceededError" ? "full" : "lost");
  }
}

/**
 * The newest record of every document of a kind.
 * @param {string} kind
 * @returns {Promise<DocumentRecord[]>}
 */
export async function newest(kind) {
  const kept = await database();
  const last = new Map((await kept.keys("versions", [kind])).map((key) => [key[1], key]));
  const found = await Promise.all([...last.values()].map((key) => kept.get("versions", key)));
  return found.filter(Boolean);
}

/**
 * The newest revision of every document of a kind, by its id.
 * @param {string} kind
 * @returns {Promise<Map<string, number>>}
 */
export const revisions = async (kind) =>
  new Map((await (await database()).keys("versions", [kind])).map(([, id, revision]) => [id, revision]));

/**
 * Every record of one document, oldest first.
 * @param {string} kind @param {string} id
 * @returns {Promise<DocumentRecord[]>}
 */
export const versions = async (kind, id) => (await database()).rows("versions", [kind, id]);

/**
 * The newest record of one document, if there is one.
 * @param {string} kind @param {string} id
 * @returns {Promise<DocumentRecord | undefined>}
 */
export async function last(kind, id) {
  const kept = await database();
  const key = (await kept.keys("versions", [kind, id])).at(-1);
  return key && kept.get("versions", key);
}

/**
 * Keep a document. When this returns, it is kept.
 * @param {string} kind @param {string} id @param {string} text
 * @param {number} after the revision that the text was made from, 0 for a new document
 * @throws {Overtaken} when another window kept a newer one; {NotKept} with a sentence
 */
export const keep = (kind, id, text, after) => keepAll(kind, id, [{ text }], after);

/**
 * Keep several states of a document one after another, all of them or none; as `keep`, and gives the last record.
 * @param {string} kind @param {string} id
 * @param {{text: string, at?: string}[]} states oldest first, one at least; `at`: when it was so, if not now
 * @param {number} after
 */
export async function keepAll(kind, id, states, after) {
  const records = recordsOf(kind, id, states, after);
  const newest = records[records.length - 1];
  await change("versions", async ({ keys, put, cut }) => {
    const there = (await keys([kind, id])).at(-1)?.[2] ?? 0;
    if (there !== after) throw new Overtaken();
    for (const record of records) await put(record);
    if (newest.revision > VERSIONS_KEPT) await cut([kind, id], newest.revision - VERSIONS_KEPT);
  });
  announce({ kind, id });
  askToLast();
  return newest;
}

/**
 * Keep many documents in one go, each whole; one that another window has begun meanwhile is passed over.
 * @param {{kind: string, id: string, states: {text: string, at?: string}[], after: number}[]} documents as for
 *   `keepAll`
 * @returns {Promise<Change[]>} those that are kept now
 */
export async function keepMany(documents) {
  /** @type {Change[]} */
  const kept = [];
  await change("versions", async ({ keys, put }) => {
    for (const { kind, id, states, after } of documents) {
      if (((await keys([kind, id])).at(-1)?.[2] ?? 0) !== after) continue;
      await Promise.all(recordsOf(kind, id, states.slice(-VERSIONS_KEPT), after).map(put));
      kept.push({ kind, id });
    }
  });
  kept.forEach(announce);
  askToLast();
  return kept;
}

/**
 * The records of several states, one after another.
 * @param {string} kind @param {string} id @param {{text: string, at?: string}[]} states @param {number} after
 * @returns {DocumentRecord[]}
 */
function recordsOf(kind, id, states, after) {
  return states.map(({ text, at }, index) => ({ kind, id, revision: after + 1 + index, at: at || now(), text }));
}

/**
 * Take a document out for good, with all its records.
 * @param {string} kind @param {string} id
 */
export async function remove(kind, id) {
  await change("versions", ({ cut }) => cut([kind, id], Infinity));
  announce({ kind, id });
}

/**
 * A choice of this reader's, such as which method the pages follow; empty when she made none.
 * @param {string} name
 * @returns {Promise<string>}
 */
export const choice = async (name) => (await (await database()).get("choices", [name]))?.value ?? "";

/** @param {string} name @param {string} value */
export async function choose(name, value) {
  await change("choices", ({ put }) => put({ name, value }));
  announce({ kind: "choice", id: name });
}

let asked = false;

/** Ask the browser, once, not to clear away what is kept here when it needs room. */
function askToLast() {
  if (asked) return;
  asked = true;
  navigator.storage?.persist?.().catch(() => {});
}

/** Whether the browser has promised not to clear away what is kept here. */
export const isSafe = async () => Boolean(await navigator.storage?.persisted?.().catch(() => false));

/** A name for a new document that no other browser will give. */
export const newId = () =>
  [...crypto.getRandomValues(new Uint8Array(10))].map((byte) => (byte % 36).toString(36)).join("");
