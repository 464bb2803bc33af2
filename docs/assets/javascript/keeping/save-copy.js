/** Everything that this browser keeps as one file: written some things at a time, and read back before it is saved. */
import { Question } from "../python/messages.js";
import { ask } from "../python/python.js";
import { now } from "./clock.js";
import { marksNow } from "./copies.js";
import { CopyFile, LARGEST, megabytes } from "./copy-file.js";
import { left } from "./drafts.js";
import { EVERYTHING } from "./everything.js";
import { Held } from "./held.js";
import { putBack } from "./put-back.js";
import { last } from "./store.js";

const PART = 4_000_000; // [characters] that are put away together, where the browser may lay them on its disk

/**
 * @typedef {import("./copies.js").Copy} Copy
 * @typedef {{done: number, total: number, doing: string}} Progress
 *
 * @typedef {object} Saved
 * @property {Blob} blob
 * @property {Copy} copy
 * @property {Record<string, number>} counts kind → how many
 * @property {string[]} said
 */

/**
 * @param {Record<string, string>} choices name → what was chosen
 * @param {(progress: Progress) => void} tell
 * @param {AbortSignal} signal
 * @returns {Promise<Saved>}
 * @throws {Error} with a sentence
 */
export async function saveCopy(choices, tell, signal) {
  await putBackWhatIsLeft();
  const copy = { at: now(), marks: await marksNow() };
  const things = Object.entries(copy.marks).flatMap(([kind, marks]) => Object.keys(marks).map((id) => ({ kind, id })));
  const { start, between, end } = await ask({ ask: Question.FILE_AROUND, at: copy.at, choices }, { signal });
  const said = new Set();
  const file = new Parts();
  file.add(start);
  let done = 0;
  /** @type {{kind: string, id: string, versions: {at: string, text: string}[]}[]} */
  let waiting = [];
  let size = 0;
  const write = async () => {
    if (!waiting.length) return;
    const reply = await ask({ ask: Question.SAVE_SOME, documents: waiting }, { signal });
    for (const entry of reply.entries) file.add(done++ ? between + entry : entry);
    for (const sentence of reply.said) said.add(sentence);
    if (file.length > LARGEST) throw new Error(TOO_LARGE);
    tell({ done, total: things.length, doing: "written" });
    [waiting, size] = [[], 0];
  };
  for (const { kind, id } of things) {
    signal.throwIfAborted();
    const states = (await EVERYTHING[kind].states(id)).map(({ at, text }) => ({ at, text }));
    if (!states.length) continue; // taken out meanwhile
    const length = states.reduce((sum, { text }) => sum + text.length, 0);
    if (waiting.length >= AT_ONCE.things || size + length > AT_ONCE.characters) await write();
    waiting.push({ kind, id, versions: states });
    size += length;
  }
  await write();
  file.add(end);
  const blob = file.blob();
  const counts = await readBack(blob, tell, signal);
  if (Object.values(counts).reduce((sum, count) => sum + count, 0) !== done) throw new Error(NOT_WHOLE);
  return { blob, copy, counts, said: [...said] };
}

const AT_ONCE = { things: 25, characters: 250_000 }; // of one question to Python
const NOT_WHOLE = "The file could not be read back, so it was not saved. Try again, with other programs closed.";
const TOO_LARGE =
  `All that is kept here comes to more than ${megabytes(LARGEST)}, which is the most that one file holds. ` +
  "Save your jobs and methods one by one.";

/** What was typed last in windows that are gone goes into its document first. */
async function putBackWhatIsLeft() {
  for (const kind of /** @type {("method" | "job")[]} */ (["method", "job"])) {
    for (const { id } of await left(kind)) {
      const record = await last(kind, id);
      if (record) await putBack(new Held(kind, record));
    }
  }
}

/**
 * What the file holds, counted by who would open it.
 * @param {Blob} blob @param {(progress: Progress) => void} tell @param {AbortSignal} signal
 */
async function readBack(blob, tell, signal) {
  const file = await CopyFile.split(blob);
  /** @type {Record<string, number>} */
  const counts = {};
  let done = 0;
  const groups = file.groups([...file.ranges.keys()]);
  for (const group of groups.length ? groups : [[]]) {
    const entries = await file.texts(group);
    const { counted, trouble } = await ask({ ask: Question.COUNT, head: file.head, entries }, { signal });
    if (trouble) throw new Error(NOT_WHOLE);
    for (const [kind, count] of Object.entries(counted)) counts[kind] = (counts[kind] ?? 0) + Number(count);
    done += group.length;
    tell({ done, total: file.ranges.length, doing: "read back" });
  }
  return counts;
}

class Parts {
  length = 0; // [characters], which are bytes or more
  /** @type {Blob[]} */
  #parts = [];
  /** @type {string[]} */
  #waiting = [];
  #size = 0;

  /** @param {string} text */
  add(text) {
    this.#waiting.push(text);
    this.#size += text.length;
    this.length += text.length;
    if (this.#size > PART) this.#putAway();
  }

  #putAway() {
    this.#parts.push(new Blob(this.#waiting));
    [this.#waiting, this.#size] = [[], 0];
  }

  blob() {
    this.#putAway();
    return new Blob(this.#parts, { type: "application/json" });
  }
}
