/**
 * What was typed into a document and is not kept in it yet: put down at once, as raw text, before anything else is done
 * with it, and dropped once the document that took it is kept. Each window has drafts of its own; whoever opens the
 * document next finds those of windows that are gone.
 */
import { get, names, restored, set } from "./at-once.js";
import { ruler } from "./kept.js";
import { HERE, stay, windows } from "./windows.js";

/**
 * Of one blank: the texts typed since it was last kept, of which the first `sent` are on their way; the ruler they are
 * meant on; the revision of the document that stood on the page then; when; and `was`, what stood in the blank where
 * the document does not say.
 * @typedef {{texts: string[], sent: number, ruler: string, base: number, at: number, was?: string}} Draft
 * @typedef {{isLeft: boolean, byPath: Record<string, Draft>}} Kept of one window and document
 */

const START = "draft/";

/** @type {Set<string>} */
const mine = new Set(); // names of this window's drafts
/** @type {Set<unknown>} */
const unheld = new Set(); // what waits and would be lost with the page
let isGone = false;

export class Drafts {
  /** @param {string} kind @param {string} id of the document */
  constructor(kind, id) {
    this.name = `${START}${HERE}/${kind}/${id}`;
  }

  /** @returns {Record<string, Draft>} */
  get #all() {
    return get(this.name)?.byPath ?? {};
  }

  /**
   * This stands in a blank now. To be called before anything else is done with it.
   * @param {string} path @param {string} text @param {number} base the revision of the document in hand
   * @param {string} [readOn] @param {string} [was]
   */
  note(path, text, base, readOn = ruler(), was = undefined) {
    const all = this.#all;
    const { texts = [], sent = 0, base: first = base, was: before = was } = all[path] ?? {};
    const { [path]: _, ...others } = all;
    const waiting = [...texts.slice(0, sent), text];
    this.#put({ ...others, [path]: { texts: waiting, sent, ruler: readOn, base: first, at: Date.now(), was: before } });
    stay();
  }

  /** What stands in these blanks is on its way into the document. @param {string[]} paths */
  send(paths) {
    if (!mine.has(this.name)) return;
    const all = this.#all;
    for (const path of paths) if (all[path]) all[path].sent = all[path].texts.length;
    this.#put(all);
  }

  /**
   * These texts are kept, or beside the document with a sentence why not; what was typed after them still waits.
   * @param {Record<string, string>} texts path → text @param {number} revision of the document that is kept now
   */
  done(texts, revision) {
    if (!mine.has(this.name)) return;
    const left = Object.entries(this.#all).flatMap(([path, draft]) => {
      const kept = Object.hasOwn(texts, path) ? draft.texts.indexOf(texts[path]) + 1 : 0;
      const base = kept || draft.base === revision - 1 ? revision : draft.base;
      const rest = { ...draft, base, texts: draft.texts.slice(kept), sent: Math.max(0, draft.sent - kept) };
      return rest.texts.length ? [[path, rest]] : [];
    });
    this.#put(Object.fromEntries(left));
  }

  /** @param {Record<string, Draft>} byPath */
  #put(byPath) {
    const isEmpty = !Object.keys(byPath).length;
    isEmpty ? mine.delete(this.name) : mine.add(this.name);
    const isHeld = set(this.name, isEmpty ? undefined : { isLeft: isGone, byPath });
    warnWhile(this.name, !isEmpty && !isHeld);
  }
}

/** Warn who leaves before this is through: no draft holds it. @param {Promise<unknown>} work */
export function untilDone(work) {
  warnWhile(work, true);
  const done = () => warnWhile(work, false);
  work.then(done, done);
}

/** @param {BeforeUnloadEvent} event */
const warn = (event) => event.preventDefault();

/**
 * Attached only while it is needed: not every browser brings a page that has it back whole.
 * @param {unknown} what @param {boolean} isNeeded
 */
function warnWhile(what, isNeeded) {
  isNeeded ? unheld.add(what) : unheld.delete(what);
  unheld.size ? addEventListener("beforeunload", warn) : removeEventListener("beforeunload", warn);
}

/**
 * The drafts that windows now gone have left of documents of a kind.
 * @param {string} kind @param {string} [id] of one document
 * @returns {Promise<{name: string, id: string, byPath: Record<string, Draft>}[]>}
 */
export async function left(kind, id) {
  await restored;
  const found = names(START).flatMap((name) => {
    const [, window, of, ...rest] = name.split("/");
    const whose = rest.join("/");
    return window !== HERE && of === kind && (id === undefined || whose === id) ? [{ name, window, id: whose }] : [];
  });
  if (!found.length) return [];
  const there = await windows();
  return found.flatMap(({ name, window, id }) => {
    const { isLeft = false, byPath = {} } = get(name) ?? {};
    return isLeft || !there.has(window) ? [{ name, id, byPath }] : [];
  });
}

/**
 * Let go of what a window has left, but for the drafts of some blanks.
 * @param {string} name @param {string[]} [but]
 */
export function drop(name, but = []) {
  const kept = Object.entries(get(name)?.byPath ?? {}).filter(([path]) => but.includes(path));
  set(name, kept.length ? { isLeft: true, byPath: Object.fromEntries(kept) } : undefined);
}

addEventListener("pagehide", () => {
  isGone = true;
  for (const name of mine) set(name, { ...get(name), isLeft: true });
});

addEventListener("pageshow", ({ persisted }) => {
  isGone = false;
  if (persisted && mine.size) location.reload(); // another window may have taken them meanwhile
});
