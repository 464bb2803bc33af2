/** The work in hand: measures that every page knows, each under what it measures; of the job in hand, or of none. */
import { names, set } from "./at-once.js";
import { jobInHand, keepTyped, keptAs, typedIn } from "./kept.js";

/**
 * @typedef {object} Measure
 * @property {string} text as it was typed
 * @property {string} readOn the ruler on which a bare number in it is meant
 * @property {string} [refused] where it could not be read: the sentence that says so
 * @property {string} [inJob] what the job in hand had for it when the two were last alike
 */

const START = "in-hand/";
const IN_JOB = "in-job"; // beside a text: what the job had

/** What a measure is kept under among all that was typed. @param {string} name */
const place = (name) => `${START}${jobInHand()}/${name}`;

/** @type {Set<() => void>} */
const listeners = new Set();

/** @param {string} name @returns {Measure | undefined} */
export function measure(name) {
  const { texts, readOn, refused } = typedIn(place(name));
  if (!Object.hasOwn(texts, name)) return undefined;
  return { text: texts[name], readOn, refused: refused[name], inJob: texts[IN_JOB] };
}

/** What the job in hand had for a measure when the two were last alike. @param {string} name */
export const wasInJob = (name) => typedIn(place(name)).texts[IN_JOB];

/**
 * A measure and the job in hand are alike: both have this text, or none.
 * @param {string} name @param {string | undefined} text
 */
export function isInJob(name, text) {
  const there = measure(name);
  if (text === undefined && !there) set(keptAs(place(name)), undefined);
  else if (there && there.inJob !== text) put(name, { ...there, inJob: text });
}

/** @param {string} name @param {Measure} written */
function put(name, { text, readOn, refused, inJob }) {
  const texts = { [name]: text, ...(inJob === undefined ? {} : { [IN_JOB]: inJob }) };
  keepTyped(place(name), texts, readOn, refused ? { [name]: refused } : {});
}

/** Every measure in hand, by its name. @returns {Record<string, Measure>} */
export function measures() {
  const start = keptAs(place(""));
  const found = names(start).map((each) => each.slice(start.length));
  /** @type {Record<string, Measure>} */
  const there = {};
  for (const name of found) {
    const measured = measure(name);
    if (measured) there[name] = measured;
  }
  return there;
}

/**
 * Write measures down, each under its name; undefined takes one out of hand.
 * @param {[name: string, written?: Measure][]} all
 */
export function write(all) {
  let isOther = false;
  for (const [name, written] of all) {
    const before = measure(name);
    const isSame = before?.text === written?.text && before?.readOn === written?.readOn;
    if (isSame && before?.refused === written?.refused) continue;
    const inJob = wasInJob(name);
    if (written) put(name, { inJob, ...written });
    else if (inJob === undefined) set(keptAs(place(name)), undefined);
    else keepTyped(place(name), { [IN_JOB]: inJob }, ""); // the job does not know yet that it was put down
    isOther ||= !isSame;
  }
  if (isOther) tell();
}

/**
 * Hear of it when a measure is another.
 * @param {() => void} listener
 */
export function onMeasures(listener) {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function tell() {
  for (const listener of [...listeners]) listener();
}

// another window works on the same
addEventListener("storage", ({ key }) => (key === null || key.includes(keptAs(START))) && tell());
