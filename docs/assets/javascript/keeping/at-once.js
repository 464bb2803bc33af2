/** Small things that are put down at once: whoever writes one goes on only when it is written. */
import { KEPT_UNDER } from "../site.js";
import { mirror, takeLeft } from "./mirror.js";

const NUMBER = "put down"; // of what was put down last

/** @type {Map<string, any>} */
const memory = new Map(); // what the browser would not keep, as when it is full: the visit still remembers
/** @type {Set<string>} */
const touched = new Set(); // what was put down by this page

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
  const number = Math.max(Date.now(), (get(NUMBER) ?? 0) + 1);
  touched.add(name);
  const isKept = put(name, value) && put(NUMBER, number);
  mirror({ number, name, value });
  return isKept;
}

/** @param {string} name @param {unknown} value */
function put(name, value) {
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

/** Resolves with the names of what a browser that was killed had not written, once that is put down again. */
export const restored = restore().catch(() => /** @type {Set<string>} */ (new Set()));

async function restore() {
  /** @type {Set<string>} */
  const names = new Set();
  const before = get(NUMBER) ?? 0; // as the browser had it, and nothing of this page yet
  await takeLeft((entries) => {
    for (const { number, name, value } of entries) {
      if (number <= before) continue;
      names.add(name);
      const now = get(name);
      if (!touched.has(name)) put(name, value);
      else if (now?.texts && value?.texts) set(name, { ...now, texts: { ...value.texts, ...now.texts } });
    }
    put(NUMBER, Math.max(get(NUMBER) ?? 0, entries.at(-1)?.number ?? 0));
  });
  return names;
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
