/** What a reader has typed and chosen, kept in this browser between pages and visits. */

import { KEPT_UNDER } from "../site.js";
import { get, set } from "./at-once.js";
import { asMeantThen, EDITION } from "./kept-before.js";

/**
 * @typedef {Record<string, string>} Texts field name → text
 * @typedef {Record<string, {text: string, sentence: string}>} Refusals path → the text, and the sentence that says why
 */

/**
 * The name under which a calculator is kept: in a walk, or filled in by a page in its own way, it has numbers of its
 * own.
 * @param {string} calculator @param {Texts} given @param {string} [walk]
 */
export const nameOf = (calculator, given, walk = "") =>
  [walk, calculator, JSON.stringify(given)].filter((part) => part && part !== "{}").join("/");

/** What a calculator's numbers of no job are put down under. @param {string} name */
export const keptAs = (name) => `typed/${name}`;

/**
 * What the reader filled in herself, by the name of what she filled in: field name → text, the ruler on which a bare
 * number among them is to be read, and of the texts that could not be read field name → the sentence that says so.
 * @param {string} name
 * @returns {{texts: Texts, readOn: string, refused: Texts}}
 */
export function typedIn(name) {
  const { texts = {}, readOn = ruler(), refused = {}, edition } = get(keptAs(name)) ?? {};
  return { texts: edition === EDITION ? texts : asMeantThen(name, texts), readOn, refused };
}
/** @param {string} name @param {Texts} texts @param {string} readOn @param {Texts} [refused] */
export const keepTyped = (name, texts, readOn, refused = {}) =>
  set(keptAs(name), { texts, readOn, refused, edition: EDITION });

/**
 * The texts of a form that could not be taken.
 * @param {string} form
 * @returns {Refusals}
 */
export const refusedIn = (form) => get(`refused/${form}`) ?? {};
/** @param {string} form @param {Refusals} refused */
export const keepRefused = (form, refused) => set(`refused/${form}`, Object.keys(refused).length ? refused : undefined);

/**
 * The ruler chosen, such as "in 1/16"; empty for the house's own.
 * @returns {string}
 */
export const ruler = () => get("ruler") ?? "";
/** @param {string} chosen */
export const keepRuler = (chosen) => set("ruler", chosen);

const LAST_JOB = "job in hand"; // in whatever window, so that the next one begins with it
/** @type {string | null} */
let inHand = null; // where the browser keeps nothing the visit still remembers

/**
 * The job that this window works on, across pages and reloads; empty for none. Another window may work on another; a
 * new one begins with what was in hand last.
 * @returns {string}
 */
export function jobInHand() {
  const id = inThisWindow() ?? inHand;
  return id ?? begin(get(LAST_JOB) ?? "");
}

function inThisWindow() {
  try {
    return sessionStorage.getItem(`${KEPT_UNDER}job`);
  } catch {
    return null;
  }
}

/** @param {string} id */
function begin(id) {
  inHand = id;
  try {
    sessionStorage.setItem(`${KEPT_UNDER}job`, id);
  } catch {
    // forbidden
  }
  return id;
}

/** @type {Set<() => void>} */
const listeners = new Set();

/** Hear of it when this window works on another job, or on none. @param {() => void} listener */
export const onJobInHand = (listener) => listeners.add(listener);

/** @param {string} id */
export function takeInHand(id) {
  begin(id);
  set(LAST_JOB, id || undefined);
  listeners.forEach((listener) => listener());
}

/** A job that is finished or gone is in hand no longer. @param {string} id */
export function putDown(id) {
  if (jobInHand() === id) begin("");
  if (get(LAST_JOB) === id) set(LAST_JOB, undefined);
  listeners.forEach((listener) => listener());
}
