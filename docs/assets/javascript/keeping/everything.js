/**
 * Everything that this browser keeps, kind by kind, as it goes into a copy and comes back out of one. A kind of thing
 * that is kept one day is one entry more here, and one in `calculators/documents/exchange/kinds.py`.
 */
import { get, names, set } from "./at-once.js";
import { keepMany, newest, revisions, versions } from "./store.js";

/**
 * @typedef {{at: string, text: string}} State
 * @typedef {{kind: string, id: string, states: State[], after: number}} Wanted `after`: the revision it follows, else 0
 *
 * @typedef {object} Keeper
 * @property {(count: number) => string} words how so many of them are called
 * @property {boolean} isDated whether all its states are kept, each with its day
 * @property {boolean} isCounted whether these words take "is" and "has" for one of them
 * @property {() => Promise<Map<string, string>>} marks id → what becomes another whenever the thing changes
 * @property {(id: string) => Promise<State[]>} states oldest first
 * @property {() => Promise<Map<string, {text: string, revision: number}>>} newest by id
 * @property {(things: Wanted[]) => Promise<number>} keep puts them down and tells how many it could
 */

/** @param {string} kind @param {(count: number) => string} words @param {boolean} isCounted @returns {Keeper} */
const documents = (kind, words, isCounted) => ({
  words,
  isDated: true,
  isCounted,
  marks: async () => new Map([...(await revisions(kind))].map(([id, revision]) => [id, String(revision)])),
  states: (id) => versions(kind, id),
  newest: async () => new Map((await newest(kind)).map(({ id, text, revision }) => [id, { text, revision }])),
  keep: async (things) => (await keepMany(things)).length,
});

/**
 * @param {string} start of their names @param {(count: number) => string} words
 * @param {(data: any) => object[]} parts what it holds; nothing was typed where all of these are empty
 * @returns {Keeper}
 */
const texts = (start, words, parts) => ({
  words,
  isDated: false,
  isCounted: false,
  marks: async () => new Map(held(start, parts).map(([id, text]) => [id, shortened(text)])),
  states: async (id) => (get(start + id) ? [{ at: "", text: JSON.stringify(get(start + id)) }] : []),
  newest: async () => new Map(held(start, parts).map(([id, text]) => [id, { text, revision: 1 }])),
  keep: async (things) =>
    things.filter(({ id, states }) => set(start + id, JSON.parse(states[states.length - 1].text))).length,
});

/** @param {string} start @param {(data: any) => object[]} parts @returns {[id: string, text: string][]} */
const held = (start, parts) =>
  names(start).flatMap((name) => {
    const data = get(name);
    const hasAny = parts(data).some((part) => Object.keys(part).length > 0);
    return hasAny ? [[name.slice(start.length), JSON.stringify(data)]] : [];
  });

/** @param {number} count @param {string} one @param {string} [many] */
const counted = (count, one, many = `${one}s`) => `${count.toLocaleString("en-GB")} ${count === 1 ? one : many}`;

/** @type {Record<string, Keeper>} */
export const EVERYTHING = {
  method: documents("method", (count) => counted(count, "method"), true),
  job: documents("job", (count) => counted(count, "job"), true),
  loose: documents("loose", () => "the ticks of the batch without a job", false),
  typed: texts(
    "typed/",
    (count) => `the numbers typed in ${counted(count, "calculator")}`,
    ({ texts = {}, refused = {} }) => [texts, refused],
  ),
  refused: texts(
    "refused/",
    (count) => `the texts that ${counted(count, "form")} could not take`,
    (all) => [all],
  ),
};

/**
 * Put down what Python has taken out of a file, after nothing.
 * @param {{kind: string, id: string, versions: State[]}[]} documents
 */
export async function putDown(documents) {
  for (const [kind, { keep }] of Object.entries(EVERYTHING)) {
    const things = documents.filter((each) => each.kind === kind && each.versions.length);
    if (things.length) await keep(things.map(({ id, versions: states }) => ({ kind, id, states, after: 0 })));
  }
}

/** @param {Record<string, number>} counts kind → how many, such as "2 methods and 14 jobs" */
export function inWords(counts) {
  const parts = Object.entries(EVERYTHING).flatMap(([kind, { words }]) => (counts[kind] ? [words(counts[kind])] : []));
  return parts.length > 1 ? `${parts.slice(0, -1).join(", ")} and ${parts[parts.length - 1]}` : (parts[0] ?? "");
}

/** @param {Record<string, number>} counts whether it is one single thing that they count */
export function isOne(counts) {
  const there = Object.entries(counts).filter(([, count]) => count > 0);
  return there.length === 1 && there[0][1] === 1 && EVERYTHING[there[0][0]].isCounted;
}

/**
 * A text as a short one that is another for another text (FNV-1a, 32 bits).
 * @param {string} text
 */
function shortened(text) {
  let mixed = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) mixed = Math.imul(mixed ^ text.charCodeAt(at), 0x01000193);
  return (mixed >>> 0).toString(36);
}
