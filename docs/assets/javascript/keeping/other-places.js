/**
 * What the handbook has kept in this browser under other names than today's: a copy on a disk went by the path at which
 * it lay, so that under another drive letter everything was out of sight. It is taken over, once, and left where it is.
 */
import { openDB } from "idb";
import { isOnDisk, KEPT_UNDER } from "../site.js";
import { database, NAME } from "./database.js";
import { choice, choose, keepAll, keepMany, newest } from "./store.js";

/** @import { DocumentRecord } from "./store.js" */

const OURS = /^workroom(\/.*\/)$/; // the path stands in the name
const TEXT = /^(\/.*\/)(typed\/.*|refused\/.*|ruler)$/;

/** The paths under which a handbook has kept something in this browser, but for this one. */
export async function otherPlaces() {
  const all = (await indexedDB.databases?.().catch(() => [])) ?? [];
  return all.flatMap(({ name = "" }) => (name === NAME ? [] : (OURS.exec(name)?.[1] ?? [])));
}

/**
 * Take over what copies on a disk have kept under other names.
 * @returns {Promise<Record<string, number>>} how many of each kind are here now that were not
 */
export async function takeOver() {
  /** @type {Record<string, number>} */
  const taken = {};
  if (!isOnDisk) return taken;
  takeOverTexts();
  for (const path of await otherPlaces()) {
    if (await choice(`taken over ${path}`)) continue;
    for (const kind of await documentsOf(path)) taken[kind] = (taken[kind] ?? 0) + 1;
    await choose(`taken over ${path}`, "yes");
  }
  return taken;
}

/** What was typed goes where nothing is typed yet. */
function takeOverTexts() {
  for (const key of Object.keys(localStorage)) {
    const [, path, name] = TEXT.exec(key) ?? [];
    if (!path || path === KEPT_UNDER || localStorage.getItem(KEPT_UNDER + name) !== null) continue;
    localStorage.setItem(KEPT_UNDER + name, localStorage.getItem(key) ?? "");
  }
}

/** @param {string} path @returns {Promise<string[]>} the kinds of what was taken over, one for each document */
async function documentsOf(path) {
  const old = await openDB(`workroom${path}`);
  if (!old.objectStoreNames.contains("versions")) return [];
  /** @type {Map<string, DocumentRecord[]>} */
  const documents = new Map();
  for (const record of await old.getAll("versions")) {
    const name = JSON.stringify([record.kind, record.id]);
    documents.set(name, [...(documents.get(name) ?? []), record]);
  }
  const [choices, marks] = await Promise.all([old.getAll("choices"), old.getAll("marks")]);
  old.close();
  const taken = [];
  for (const states of documents.values()) if (await isTaken(states)) taken.push(states[0].kind);
  for (const { name, value } of choices) if (!(await choice(name))) await choose(name, value);
  const kept = await database();
  const there = new Set((await kept.keys("marks", [])).map((key) => JSON.stringify(key)));
  const lacking = marks.filter(({ job, name }) => !there.has(JSON.stringify([job, name])));
  if (lacking.length) await kept.change("marks", ({ put }) => lacking.forEach(put));
  return taken;
}

/**
 * A document that is not here comes with all its states; of one that is here in an older state, the newest goes on top.
 * @param {DocumentRecord[]} states oldest first
 */
async function isTaken(states) {
  const { kind, id, at, text } = states[states.length - 1];
  const mine = (await newest(kind)).find((each) => each.id === id);
  if (!mine) return (await keepMany([{ kind, id, states, after: 0 }])).length > 0;
  if (mine.text === text || new Date(mine.at) >= new Date(at)) return false;
  await keepAll(kind, id, [{ text, at }], mine.revision);
  return true;
}
