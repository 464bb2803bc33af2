/**
 * What is kept beside documents, each as one text under a name: numbers that belong to no job, and what a form could
 * not take.
 */
import { KEPT_UNDER } from "../site.js";

/** @param {string} start @returns {string[]} the rest of every name that begins so */
export function namesUnder(start) {
  try {
    const whole = KEPT_UNDER + start;
    return Object.keys(localStorage).flatMap((key) => (key.startsWith(whole) ? [key.slice(whole.length)] : []));
  } catch {
    return []; // this browser keeps nothing
  }
}

/** @param {string} name @returns {string} empty for none */
export const textUnder = (name) => localStorage.getItem(KEPT_UNDER + name) ?? "";

/**
 * @param {string} name @param {string} text as JSON
 * @returns {boolean} whether it is kept
 */
export function putUnder(name, text) {
  try {
    localStorage.setItem(KEPT_UNDER + name, JSON.stringify(JSON.parse(text)));
    return true;
  } catch {
    return false;
  }
}
