/**
 * What is put down at once the browser itself writes to the disk only seconds later, if it is not killed before. So it
 * goes into the journal too, each window into files that no other open window has; the next opening puts back what the
 * browser had not written yet.
 *
 * The files are used again and never deleted: what a browser writes into its list of private files shortly before it is
 * killed may be lost, and a new file with it.
 *
 * @typedef {{number: number, name: string, value?: any}} Entry `number` grows with everything put down, and is never
 *   below the clock [ms]
 */
import { onState } from "../python/python.js";
import { KEPT_UNDER } from "../site.js";
import { appendOwn, files, isThere, read, write as writeAnew } from "./journal.js";

const FILE = /^typed (\d+) [01]$/; // its place, and which of the two that take turns there
const LONG = 256_000; // [bytes] of a file at which its turn ends
const PAUSE = 20; // [ms]
const CALM = 300; // [ms] in which an awake Python gives its first answers
const WRITTEN = 600_000; // [ms] after which the browser has surely written everything itself

/** @type {Map<string, Entry>} */
const waiting = new Map(); // by name: the newest alone
/** @type {Map<string, Entry>} */
const newest = new Map(); // all that the files of this window have
/** @type {Promise<number> | null} */
let place = null;
let turn = 0;
let isBusy = false;
let isAbsent = false;

/** Have an entry written; one after another, the newest of each name. @param {Entry} entry */
export function mirror(entry) {
  waiting.set(entry.name, entry);
  if (!isBusy && !isAbsent) write();
}

async function write() {
  isBusy = true;
  try {
    isAbsent = !navigator.locks || !(await isThere());
    while (!isAbsent) {
      const entries = [...waiting.values()];
      waiting.clear();
      for (const each of entries) newest.set(each.name, each);
      const { end } = await appendOwn(await file(), ...entries);
      if (end > LONG) await beginAnew();
      if (!waiting.size) break;
    }
  } catch {
    isAbsent = true; // as before there was a mirror
  }
  isBusy = false;
}

/** The file of this window whose turn it is. */
async function file() {
  place ??= freePlace();
  return `typed ${await place} ${turn}`;
}

/** The first place that no open window has; it is this window's as long as its page is there. */
async function freePlace() {
  for (let number = 0; ; number++) if (await isHeld(number, () => new Promise(() => {}))) return number;
}

/**
 * Hold a place while something is done, unless another window has it.
 * @param {number} number @param {() => Promise<unknown>} act
 * @returns {Promise<boolean>} at once, whether it is held
 */
function isHeld(number, act) {
  return new Promise((resolve) => {
    navigator.locks.request(lockOf(number), { ifAvailable: true }, (lock) => {
      resolve(Boolean(lock));
      return lock ? act() : undefined;
    });
  });
}

/** @param {number} number */
const lockOf = (number) => `${KEPT_UNDER}typed ${number}`;

/** The other file now has the newest of each name, and this one nothing. */
async function beginAnew() {
  const before = await file();
  turn = 1 - turn;
  await writeAnew(await file(), [...newest.values()]);
  await writeAnew(before, []);
}

/**
 * What windows that are gone have left, oldest first. Once `take` has taken it, it is this window's.
 * @param {(entries: Entry[]) => void} take
 */
export async function takeLeft(take) {
  const all = (await files()).filter((name) => FILE.test(name));
  if (!all.length || !navigator.locks) return;
  place ??= freePlace();
  const own = await place;
  const others = new Set((await navigator.locks.query()).held?.map(({ name }) => name));
  others.delete(lockOf(own));
  const left = all.filter((name) => !others.has(lockOf(placeOf(name))));
  const entries = (await Promise.all(left.map((name) => read(name)))).flatMap(({ records }) => records);
  if (!entries.length) return;
  take(entries.sort((one, other) => one.number - other.number));
  const mine = new Set([...newest.keys(), ...waiting.keys()]);
  for (const each of entries)
    if (each.number > Date.now() - WRITTEN && !mine.has(each.name)) waiting.set(each.name, each);
  if (!isBusy) write();
  while (isBusy) await new Promise((resolve) => setTimeout(resolve, PAUSE));
  if (isAbsent) return;
  isBusy = true;
  await beginAnew().catch(() => {});
  isBusy = false;
  if (waiting.size) write();
  for (const name of left) if (placeOf(name) !== own) isHeld(placeOf(name), () => writeAnew(name, []));
}

/** @param {string} name */
const placeOf = (name) => Number(FILE.exec(name)?.[1]);

/** The first letter must not wait for a worker to start, nor for its file to be opened. */
function beReady() {
  if (!isBusy && !isAbsent) write();
}

addEventListener("focusin", beReady);
onState(({ name }) => name === "ready" && setTimeout(beReady, CALM));
