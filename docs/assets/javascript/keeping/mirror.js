/**
 * What is put down at once the browser itself writes to the disk only seconds later, if it is not killed before. So it
 * goes into the journal too, each window into a file of its own; the next opening puts back what the browser had not
 * written yet.
 *
 * @typedef {{number: number, name: string, value?: any}} Entry `number` grows with everything put down, and is never
 *   below the clock [ms]
 */
import { onState } from "../python/python.js";
import { append, files, isThere, read, remove } from "./journal.js";
import { HERE, stay, windows } from "./windows.js";

const START = "typed ";
const LONG = 256_000; // [bytes] of a file that is begun anew
const PAUSE = 20; // [ms]
const CALM = 300; // [ms] in which an awake Python gives its first answers
const WRITTEN = 600_000; // [ms] after which the browser has surely written everything itself

/** @type {Map<string, Entry>} */
const waiting = new Map(); // by name: the newest alone
/** @type {Map<string, Entry>} */
const newest = new Map(); // all that the file has
let part = 0;
let isBusy = false;
let isAbsent = false;

const file = () => `${START}${HERE} ${part}`;

/** Have an entry written; one after another, the newest of each name. @param {Entry} entry */
export function mirror(entry) {
  waiting.set(entry.name, entry);
  if (!isBusy && !isAbsent) write();
}

async function write() {
  isBusy = true;
  try {
    isAbsent = !(await isThere());
    await stay();
    while (!isAbsent) {
      const entries = [...waiting.values()];
      waiting.clear();
      for (const each of entries) newest.set(each.name, each);
      const { end } = await append(file(), ...entries);
      if (end > LONG) await beginAnew();
      if (!waiting.size) break;
    }
  } catch {
    isAbsent = true; // as before there was a mirror
  }
  isBusy = false;
}

async function beginAnew() {
  const before = file();
  part++;
  await append(file(), ...newest.values());
  await remove(before);
}

/**
 * What windows that are gone have left, oldest first. Once `take` has taken it, it is this window's.
 * @param {(entries: Entry[]) => void} take
 */
export async function takeLeft(take) {
  const all = (await files()).filter((name) => name.startsWith(START));
  if (!all.length) return;
  const there = await windows();
  const left = all.filter((name) => !there.has(name.slice(START.length).split(" ")[0]));
  const entries = (await Promise.all(left.map((name) => read(name)))).flatMap(({ records }) => records);
  take(entries.sort((one, other) => one.number - other.number));
  const mine = new Set([...newest.keys(), ...waiting.keys()]);
  for (const each of entries)
    if (each.number > Date.now() - WRITTEN && !mine.has(each.name)) waiting.set(each.name, each);
  if (waiting.size && !isBusy) write();
  while (isBusy) await new Promise((resolve) => setTimeout(resolve, PAUSE));
  if (isAbsent) return;
  for (const name of left) await remove(name);
}

/** The first letter must not wait for a worker to start. */
function beReady() {
  if (!isBusy && !isAbsent && !newest.size) write();
}

addEventListener("focusin", beReady, { once: true });
onState(({ name }) => name === "ready" && setTimeout(beReady, CALM));
