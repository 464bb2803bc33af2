import { askHouse } from "../keeping/following.js";

/** @import { Reply, Request } from "../python/messages.js" */

/** Asks for the newest state only: a question overtaken by a newer one is dropped. */
export class Newest {
  /** @type {AbortController | null} */
  #open = null;

  /**
   * @param {Request} request
   * @param {(reply: Reply) => void} show
   * @param {(sentence: string) => void} fail
   */
  async ask(request, show, fail) {
    this.#open?.abort();
    this.#open = new AbortController();
    const { signal } = this.#open;
    try {
      const reply = await askHouse(request, {
        signal,
        onPartial: (partial) => signal.aborted || partial.working || show(partial),
      });
      if (!signal.aborted) show(reply);
    } catch (problem) {
      if (!signal.aborted) fail(/** @type {Error} */ (problem).message);
    }
  }
}
