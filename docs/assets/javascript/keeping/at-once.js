/** Small things that are put down at once: whoever writes one goes on only when it is written. */
import { KEPT_UNDER } from "../site.js";

/** @type {Map<string, any>} */
const memory = new Map(); // what the browser would not keep, as when it is full: the visit still remembers

/** @param {string} name @returns {any} */
export function get(name) {
  if (memory.has(name)) return memory.get(name); // newer than what the browser has
  try {
    return JSON.parse(localStorage.getItem(KEPT_UNDER + name) ?? "null") ?? undefined;
  } catch {
    return undefined;
  }
}

/**
 * @param {string} name @param {unknown} value undefined takes it out
 * @returns {boolean} whether the browser keeps it
 */
export function set(name, value) {
  try {
    if (value === undefined) localStorage.removeItem(KEPT_UNDER + name);
    else localStorage.setItem(KEPT_UNDER + name, JSON.stringify(value));
    memory.delete(name);
    return true;
  } catch {
    memory.set(name, value);
    return false;
  }
}

/** The names of all that is there under a beginning. @param {string} start */
export function names(start) {
  const found = new Set([...memory.keys()].filter((name) => memory.get(name) !== undefined));
  try {
    for (const key of Object.keys(localStorage))
      if (key.startsWith(KEPT_UNDER)) found.add(key.slice(KEPT_UNDER.length));
  } catch {
    // forbidden: only what the visit remembers
  }
  return [...found].filter((name) => name.startsWith(start) && get(name) !== undefined);
}
