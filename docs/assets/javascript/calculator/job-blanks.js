/** What stands in the blanks of a walk that is a job: as kept, and beside it what was typed and could not be kept. */
import { ruler } from "../keeping/kept.js";
import { RefusedTexts } from "../keeping/refused-texts.js";

/**
 * @import { Texts } from "../keeping/kept.js"
 * @import { Section } from "./section.js"
 *
 * @typedef {HTMLInputElement | HTMLTextAreaElement} JobBlank a blank of the job itself, such as its name
 */

export class JobBlanks {
  /** @param {HTMLElement} element the walk */
  constructor(element) {
    this.element = element;
    /** @type {NodeListOf<JobBlank>} */
    const blanks = element.querySelectorAll(".jobs :is(input, textarea)");
    this.all = [...blanks];
  }

  /**
   * @param {string} id of the job @param {Section[]} sections
   * @param {Record<string, Texts>} typed calculator → field → text
   * @param {Texts} texts of the job's own blanks
   * @param {Texts} waiting what stands in a blank in use and is not kept yet
   */
  show(id, sections, typed, texts, waiting) {
    const refused = new RefusedTexts(`job/${id}`).all;
    for (const section of sections) {
      const start = `typed.${section.calculator}.`;
      /** @param {"text" | "sentence"} part @returns {Texts} */
      const own = (part) =>
        Object.fromEntries(
          refused.flatMap(([path, each]) => (path.startsWith(start) ? [[path.slice(start.length), each[part]]] : [])),
        );
      section.hold({ ...typed[section.calculator], ...own("text") }, ruler(), own("sentence"));
    }
    for (const blank of this.all) {
      if (blank !== document.activeElement || !Object.hasOwn(waiting, blank.name)) blank.value = texts[blank.name];
      this.#mark(blank);
    }
    for (const [path, { text, sentence }] of refused) {
      const blank = this.#named(path);
      if (!blank) continue;
      if (blank !== document.activeElement) blank.value = text;
      this.#mark(blank, sentence);
    }
  }

  /**
   * A text could be taken, or not, which a sentence then says.
   * @param {string} id of the job @param {string} path @param {string} text @param {string} [sentence]
   */
  note(id, path, text, sentence) {
    new RefusedTexts(`job/${id}`).note(path, text, sentence);
    const blank = this.#named(path);
    if (blank) this.#mark(blank, sentence);
  }

  /** @param {string} path */
  #named(path) {
    return this.all.find(({ name }) => name === path);
  }

  /** @param {JobBlank} blank */
  #mark(blank, sentence = "") {
    blank.setAttribute("aria-invalid", String(Boolean(sentence)));
    const place = this.element.querySelector(`.jobs .refusal[data-field="${CSS.escape(blank.name)}"]`);
    if (place) [place.textContent, place.hidden] = [sentence, !sentence];
  }
}
