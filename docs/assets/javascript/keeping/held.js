/** One document that a page has in hand: every change is worked out by Python, then kept, one after another. */
import { MERGE } from "../python/messages.js";
import { ask } from "../python/python.js";
import { untilDone } from "./drafts.js";
import { keep, last, Overtaken } from "./store.js";

/**
 * @import { Reply } from "../python/messages.js"
 *
 * @typedef {"method" | "job" | "loose"} Kind
 */

const TRIES = 8;

export class Held {
  /** @type {Promise<unknown>} */
  #queue = Promise.resolve();

  /**
   * @param {Kind} kind
   * @param {{id: string, text: string, revision: number, at?: string}} record as the store has it; revision 0 for one
   *   that is not kept yet
   */
  constructor(kind, record) {
    this.kind = kind;
    this.id = record.id;
    this.text = record.text; // what stands on the page
    this.keptText = record.text; // what is surely kept
    this.revision = record.revision;
    this.at = record.at ?? ""; // when it was last changed
  }

  /**
   * Change the document. Changes are made one after another, each from what the one before left.
   * @param {(text: string) => Promise<Reply>} make Python's reply; its text under the name of the kind is what is kept
   * @param {boolean} [hasDraft] whether what is changed was put down as a draft before
   * @returns {Promise<{reply: Reply, kept: boolean, said: string}>} `said`: what another window had changed meanwhile
   */
  change(make, hasDraft = false) {
    const done = this.#queue.then(async () => {
      const reply = await make(this.text);
      const text = reply[this.kind];
      if (text === undefined || (text === this.text && this.revision > 0)) return { reply, kept: false, said: "" };
      return { reply, kept: true, said: await this.#keep(text) };
    });
    this.#queue = done.catch(() => {});
    if (!hasDraft) untilDone(done);
    return done;
  }

  /** @param {string} text */
  async #keep(text) {
    let said = "";
    this.text = text; // even if it cannot be kept, so that it can be saved as a file
    for (let tries = 0; tries < TRIES; tries++) {
      try {
        const record = await keep(this.kind, this.id, this.text, this.revision);
        [this.revision, this.keptText, this.at] = [record.revision, this.text, record.at];
        return said;
      } catch (problem) {
        if (!(problem instanceof Overtaken)) throw problem;
        const theirs = await last(this.kind, this.id);
        this.revision = theirs?.revision ?? 0;
        if (!theirs) continue; // taken out in another window: this brings it back
        const merged = await ask({ ask: MERGE[this.kind], base: this.keptText, mine: this.text, theirs: theirs.text });
        if (merged[this.kind] === undefined) throw problem;
        [this.keptText, this.text, said] = [theirs.text, merged[this.kind], merged.said || said];
      }
    }
    throw new Error("the other window never paused");
  }

  /** Resolves once every change begun so far is kept, or could not be. */
  rest() {
    return this.#queue;
  }

  /** Take over what another window has kept, unless something here could not be kept yet. Returns whether it did. */
  refresh() {
    const done = this.#queue.then(async () => {
      const newest = await last(this.kind, this.id);
      if (!newest || newest.revision <= this.revision || this.text !== this.keptText) return false;
      this.text = this.keptText = newest.text;
      [this.revision, this.at] = [newest.revision, newest.at];
      return true;
    });
    this.#queue = done.catch(() => {});
    return done;
  }
}
