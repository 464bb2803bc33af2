/**
 * A browser makes fast code of what Python runs most only after it has run for a while, and until then, while that code
 * is being made, everything on the page is slow: the first second of typing. So Python warms up before: it answers a
 * question over and over, one step at a time, while nothing is asked.
 */
const TIMES = 300; // answers after which the browser has made its fast code
const LONG_ENOUGH = 1500; // [ms] of work, on a slow device

/**
 * @import { Reply } from "./messages.js"
 *
 * @typedef {{next: () => {value: string, done?: boolean}, destroy: () => void}} Replies an iterator of Python's
 */

export class WarmUp {
  /** @type {Replies | null} */
  #replies = null;
  #times = 0;
  #worked = 0; // [ms]

  /**
   * @param {() => Replies} answer begins an answer
   * @param {(replies: Replies) => Reply | null} next takes one reply from it
   */
  constructor(answer, next) {
    this.answer = answer;
    this.next = next;
  }

  get isOver() {
    return this.#times >= TIMES || this.#worked >= LONG_ENOUGH;
  }

  get record() {
    return { times: this.#times, milliseconds: this.#worked };
  }

  step() {
    const began = performance.now();
    this.#replies ??= this.answer();
    if (this.next(this.#replies)?.final) this.#letGo();
    this.#worked += performance.now() - began;
    if (this.isOver) this.#replies?.destroy();
  }

  #letGo() {
    this.#times += 1;
    this.#replies?.destroy();
    this.#replies = null;
  }
}
