/** When everything here was last saved as a file, and what has changed since and would be lost. */
import { EVERYTHING, inWords, isOne } from "./everything.js";
import { choice, choose } from "./store.js";

const NAME = "copy";

/**
 * @typedef {Record<string, Record<string, string>>} Marks kind → id → what becomes another whenever the thing changes
 * @typedef {{at: string, marks: Marks}} Copy
 */

/**
 * The last copy that was saved from this browser.
 * @returns {Promise<Copy | null>}
 */
export async function lastCopy() {
  try {
    return JSON.parse((await choice(NAME)) || "null");
  } catch {
    return null; // nothing can be known of it
  }
}

/** @param {Copy} copy that was just saved */
export const rememberCopy = (copy) => choose(NAME, JSON.stringify(copy));

/** Everything here as it is now. @returns {Promise<Marks>} */
export async function marksNow() {
  const kinds = Object.entries(EVERYTHING);
  const marks = await Promise.all(kinds.map(async ([kind, { marks }]) => [kind, Object.fromEntries(await marks())]));
  return Object.fromEntries(marks);
}

/**
 * How many things of each kind are new or have changed since the last copy.
 * @returns {Promise<Record<string, number>>}
 */
export async function changedSince() {
  const [then, now] = await Promise.all([lastCopy(), marksNow()]);
  return Object.fromEntries(
    Object.entries(now).map(([kind, marks]) => {
      const before = then?.marks[kind] ?? {};
      return [kind, Object.keys(marks).filter((id) => !Object.hasOwn(before, id) || before[id] !== marks[id]).length];
    }),
  );
}

/**
 * One sentence on what would be lost, such as "9 jobs have changed since your last copy on 3 November."; empty where
 * nothing is kept yet.
 * @param {string[]} [kinds] that are spoken of
 * @returns {Promise<string>}
 */
export async function reminder(kinds = Object.keys(EVERYTHING)) {
  const [copy, all] = await Promise.all([lastCopy(), changedSince()]);
  const changed = Object.fromEntries(kinds.map((kind) => [kind, all[kind]]));
  const words = inWords(changed);
  const begun = words.charAt(0).toUpperCase() + words.slice(1);
  if (!copy)
    return words && `${begun} ${isOne(changed) ? "is" : "are"} kept in this browser only: no copy is saved yet.`;
  const day = dayInWords(copy.at);
  if (!words && kinds.length < Object.keys(EVERYTHING).length) return "";
  if (!words) return `Nothing has changed since your last copy on ${day}.`;
  return `${begun} ${isOne(changed) ? "has" : "have"} changed since your last copy on ${day}.`;
}

/** @param {string} moment such as 2026-11-03T14:03:07+01:00: 3 November, with the year if it is not this one */
export function dayInWords(moment) {
  const day = new Date(`${moment.slice(0, 10)}T12:00:00`);
  const year = day.getFullYear() === new Date().getFullYear() ? undefined : "numeric";
  return day.toLocaleDateString("en-GB", { day: "numeric", month: "long", year });
}
