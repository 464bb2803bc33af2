/** The way back from the last change in a calculator, in one tap; then the way there again, at the same place. */

/**
 * @import { Measure } from "../keeping/in-hand.js"
 *
 * What stands in a field.
 * @typedef {object} Standing
 * @property {string} shown
 * @property {string | undefined} typed undefined where it is the house's
 * @property {string} readOn the ruler on which it is meant
 * @property {[name: string, measure?: Measure][]} inHand what is in hand for it, under every name it goes by
 *
 * What the calculator does for its last change.
 * @typedef {object} Served
 * @property {(field: string) => Standing} look what stands in a field
 * @property {(field: string, shown: string) => string} say this in a reader's words
 * @property {(all: Map<string, Standing>) => void} bring lets this stand there, as if it were typed
 */

const FEW = 3; // fields that are each named

export class LastChange {
  /** @type {Map<string, Standing>} */
  #before = new Map();
  /** @type {unknown} */
  #where = null;
  #isOne = false;
  #isBack = false;

  /** @param {HTMLElement} button @param {Served} served */
  constructor(button, served) {
    this.button = button;
    this.served = served;
    button.addEventListener("click", () => this.#turn());
  }

  /**
   * Fields are about to change: all that is typed at one place, until it is left, is one change.
   * @param {string[]} fields @param {unknown} [where]
   */
  begin(fields, where = null) {
    if (this.#isOne || (where && where === this.#where)) return;
    this.#before = new Map(fields.map((field) => [field, this.served.look(field)]));
    [this.#where, this.#isBack] = [where, false];
  }

  /** The place at which something was typed is left. */
  end() {
    this.#where = null;
  }

  /** @param {string[]} fields @param {() => void} change all that happens in it is one change */
  asOne(fields, change) {
    this.begin(fields);
    this.#isOne = true;
    change();
    this.#isOne = false;
  }

  /**
   * What stands in these fields has come from elsewhere, so that what stood before it is no longer what was.
   * @param {Iterable<string>} [fields]
   */
  forget(fields = this.#before.keys()) {
    if ([...fields].some((field) => this.#before.has(field))) this.#before = new Map();
  }

  /** Say what can be brought back, if it is something else than what stands there. */
  tell() {
    const { look, say } = this.served;
    const others = [...this.#before].filter(([field, { shown }]) => shown !== look(field).shown);
    this.button.hidden = !others.length;
    if (!others.length) return;
    const words = this.#isBack ? "Redo" : "Undo";
    const each = others.map(([field, { shown }]) => say(field, shown));
    const what = each.length > FEW ? `${each.length} entries` : each.join(", ");
    this.button.textContent = words;
    this.button.setAttribute("aria-label", `${words}: ${what}`);
  }

  #turn() {
    const before = this.#before;
    this.#before = new Map([...before.keys()].map((field) => [field, this.served.look(field)]));
    [this.#where, this.#isBack] = [null, !this.#isBack];
    this.served.bring(before);
  }
}
