/** The blanks of a calculator that hold measures of the work in hand, which every page knows. */
import { measure, write } from "./in-hand.js";
import { jobInHand } from "./kept.js";

/**
 * @import { Measure } from "./in-hand.js"
 * @typedef {[name: string, measured?: Measure]} Named
 */

/** A size is written as cut or as finished: the one follows from the other, and what was written last counts. */
const OTHER_SIZE = Object.fromEntries(
  ["width", "length"].flatMap((way) => [
    [`cut_${way}`, `finished_${way}`],
    [`finished_${way}`, `cut_${way}`],
  ]),
);

export class SharedBlanks {
  /** @type {Record<string, string[]>} */
  #knownAs;
  /** @type {() => boolean} */
  #isKnown;
  /** @type {(field: string) => string} */
  #textOf;

  /**
   * @param {Record<string, string[]>} knownAs field name → what it is known as, most its own first
   * @param {() => boolean} isKnown whether what is in hand stands in its blanks just now
   * @param {(field: string) => string} textOf what stands in another field, whose text may be part of a name
   */
  constructor(knownAs, isKnown, textOf) {
    this.#knownAs = knownAs;
    this.#isKnown = isKnown;
    this.#textOf = textOf;
  }

  get fields() {
    return this.#isKnown() ? Object.keys(this.#knownAs) : [];
  }

  /** @param {string} field */
  has(field) {
    return this.#isKnown() && Object.hasOwn(this.#knownAs, field);
  }

  /**
   * What is in hand for a field.
   * @param {string} field
   * @returns {Measure & {name: string} | undefined}
   */
  found(field) {
    for (const name of this.#names(field)) {
      const there = measure(name);
      if (there) return { name, ...there };
    }
  }

  /** What is in hand for all its fields that have something: field name → text. */
  get texts() {
    const there = this.fields.flatMap((field) => {
      const measured = this.found(field);
      return measured ? [[field, measured.text]] : [];
    });
    return Object.fromEntries(there);
  }

  /**
   * What is in hand for a field under every name it goes by; nothing where it holds no measure.
   * @param {string} field
   * @returns {[name: string, measured?: Measure][]}
   */
  underEveryName(field) {
    if (!this.has(field)) return [];
    const names = this.#names(field).flatMap((name) => [name, ...(OTHER_SIZE[name] ? [OTHER_SIZE[name]] : [])]);
    return names.map((name) => {
      const { text, readOn = "", refused } = measure(name) ?? {};
      return [name, text === undefined ? undefined : { text, readOn, refused }];
    });
  }

  /** Let this be in hand. @param {[name: string, measured?: Measure][]} all */
  write(all) {
    write(all);
  }

  /**
   * Take what was typed into fields in hand, each as its own; nothing puts that down.
   * @param {[field: string, typed?: Measure][]} all
   */
  type(...all) {
    const typed = all.filter(([field]) => this.has(field));
    const named = typed.map(([field, each]) => /** @type {Named} */ ([this.#names(field)[0], each]));
    const others = named.filter(([name, each]) => each && OTHER_SIZE[name] && !jobInHand());
    write([...named, ...others.map(([name]) => /** @type {Named} */ ([OTHER_SIZE[name]]))]);
  }

  /**
   * What is in hand stays the same, with its unit written, or now has a sentence that refuses it; what was put down
   * meanwhile stays so.
   * @param {[field: string, measured: Measure][]} all
   */
  settle(all) {
    write(all.filter(([field]) => this.has(field)).flatMap(([field, measured]) => this.#there(field, measured)));
  }

  /** Put down what stands in these fields, wherever it was typed. @param {string[]} fields */
  putDown(fields) {
    write(fields.filter((each) => this.has(each)).flatMap((each) => this.#there(each)));
  }

  /** @param {string} field @param {Measure} [measured] @returns {[name: string, measured?: Measure][]} */
  #there(field, measured) {
    const there = this.found(field);
    return there ? [[there.name, measured]] : [];
  }

  /** @param {string} field */
  #names(field) {
    return this.#knownAs[field].map((name) => name.replace(/\{(\w+)\}/g, (_, other) => this.#textOf(other)));
  }
}
