/** What a reader has typed and chosen, kept in this browser between pages and visits. */

const SITE = new URL("../../", import.meta.url).pathname; // several handbooks may live on one host
const memory = new Map(); // serves alone where the browser keeps nothing

function get(name) {
  try {
    return JSON.parse(localStorage.getItem(SITE + name)) ?? memory.get(name);
  } catch {
    return memory.get(name);
  }
}

function set(name, value) {
  memory.set(name, value);
  try {
    localStorage.setItem(SITE + name, JSON.stringify(value));
  } catch {
    // full or forbidden: the visit still remembers
  }
}

/** The name under which a calculator is kept: in a walk, or filled in by a page in its own way, it has numbers of its own. */
export const nameOf = (calculator, given, walk = "") =>
  [walk, calculator, JSON.stringify(given)].filter((part) => part && part !== "{}").join("/");

/** What the reader filled in herself, by the name of what she filled in: field name → text, and the ruler on which a bare number among them is to be read. */
export const typedIn = (name) => ({ texts: {}, readOn: ruler(), ...get(`typed/${name}`) });
export const keepTyped = (name, texts, readOn) => set(`typed/${name}`, { texts, readOn });

/** The ruler chosen, such as "in 1/16"; empty for the house's own. */
export const ruler = () => get("ruler") ?? "";
export const keepRuler = (chosen) => set("ruler", chosen);

/** The job that this window works on, across pages and reloads; empty for none. Another window may work on another. */
export function jobInHand() {
  try {
    return sessionStorage.getItem(`${SITE}job`) ?? memory.get("job") ?? "";
  } catch {
    return memory.get("job") ?? "";
  }
}

export function takeInHand(id) {
  memory.set("job", id);
  try {
    sessionStorage.setItem(`${SITE}job`, id);
  } catch {
    // forbidden: the visit still remembers
  }
}
