/** This window among those that have the handbook open: what one leaves behind is known to be nobody's. */
import { KEPT_UNDER } from "../site.js";

/** The name of this window, as long as its page is there. */
export const HERE = [...crypto.getRandomValues(new Uint32Array(3))].map((part) => part.toString(36)).join("");

const START = `${KEPT_UNDER}window `;

/** @type {Promise<void> | null} */
let staying = null;

/** Hold the name for as long as the page is there; resolves once it is held. */
export function stay() {
  staying ??= new Promise((resolve) => {
    if (!navigator.locks) return resolve();
    navigator.locks.request(START + HERE, () => {
      resolve();
      return new Promise(() => {});
    });
  });
  return staying;
}

/** The names of the windows that are there; where the browser does not tell, of this one. */
export async function windows() {
  const { held = [] } = (await navigator.locks?.query()) ?? {};
  return new Set([HERE, ...held.flatMap(({ name }) => (name?.startsWith(START) ? [name.slice(START.length)] : []))]);
}
