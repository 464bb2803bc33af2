/**
 * What was typed into a document's form and could not be taken: kept beside the document, never in it, until it is
 * mended.
 */
import { keepRefused, refusedIn } from "./kept.js";

export class RefusedTexts {
  /** @param {string} form the kind of document and its id */
  constructor(form) {
    this.form = form;
  }

  /** @returns {[string, {text: string, sentence: string}][]} by the path of the blank */
  get all() {
    return Object.entries(refusedIn(this.form));
  }

  /**
   * This text now stands at a path; without a sentence it could be taken.
   * @param {string} path @param {string} text @param {string} [sentence]
   */
  note(path, text, sentence = "") {
    const { [path]: _, ...others } = refusedIn(this.form);
    if (sentence) keepRefused(this.form, { ...others, [path]: { text, sentence } });
    else if (_) keepRefused(this.form, others);
  }

  /**
   * A line of a table is taken out, or its last step of the path left out a whole table: what was refused in lines
   * below moves up with them.
   * @param {string} path
   */
  takeOut(path) {
    const [table, line] = path.split(/\.(?=\d+$)/);
    const kept = this.all.flatMap(([each, refusal]) => {
      const [, place, number, column] = each.match(/^(.*?)\.(\d+)(?=\.|$)(.*)$/) ?? [];
      if (place?.replace(/^why\./, "") !== table) return [[each, refusal]];
      if (line === undefined || number === line) return [];
      return [[`${place}.${Number(number) - (Number(number) > Number(line) ? 1 : 0)}${column}`, refusal]];
    });
    keepRefused(this.form, Object.fromEntries(kept));
  }

  forget() {
    keepRefused(this.form, {});
  }
}
