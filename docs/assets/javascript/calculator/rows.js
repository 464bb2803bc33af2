/** A table of blanks, one row for each thing asked about. Its text is the rows as JSON: a list of lists of texts. */

export class RowsTable {
  /**
   * @param {HTMLTableElement} table
   * @param {() => void} changed is called when a cell, or the number of rows, has changed
   */
  constructor(table, changed) {
    this.element = table;
    this.body = table.tBodies[0];
    this.blankRow = /** @type {HTMLTableRowElement} */ (this.body.rows[0].cloneNode(true));
    const oneMore = /** @type {HTMLElement} */ (table.parentElement).querySelector(".one-more");
    oneMore.hidden = false;
    oneMore.addEventListener("click", () => {
      this.#add();
      this.#controls(this.body.rows[this.body.rows.length - 1])[0].focus();
      changed();
    });
    this.body.addEventListener("input", changed);
    this.body.addEventListener("click", ({ target }) => {
      if (!target.matches(".leave-out")) return;
      target.closest("tr").remove();
      if (!this.body.rows.length) this.#add();
      oneMore.focus();
      changed();
    });
    this.#showLeaveOut();
  }

  get value() {
    return this.#text((control) => control.value);
  }

  /**
   * What a cell is filled in with, if there still is such a row.
   * @param {number} row @param {number} column
   */
  control(row, column) {
    return this.body.rows[row] && this.#controls(this.body.rows[row])[column];
  }

  /** What the page was built with. */
  get built() {
    return this.#text(builtText);
  }

  /** @param {(control: Control) => string} read */
  #text(read) {
    return JSON.stringify([...this.body.rows].map((row) => this.#controls(row).map(read)));
  }

  set value(text) {
    const rows = rowsIn(text);
    if (!rows) return;
    while (this.body.rows.length > Math.max(1, rows.length)) this.body.rows[this.body.rows.length - 1].remove();
    while (this.body.rows.length < rows.length) this.#add();
    rows.forEach((cells, index) => this.#fill(this.body.rows[index], cells));
  }

  /** @param {boolean} inTrouble */
  markTrouble(inTrouble) {
    this.element.classList.toggle("in-trouble", inTrouble);
  }

  /** @param {HTMLTableRowElement} row @param {string[]} cells */
  #fill(row, cells) {
    this.#controls(row).forEach((control, index) => {
      if (control.matches("input") || cells[index]) control.value = cells[index] ?? "";
    });
  }

  #add() {
    const row = /** @type {HTMLTableRowElement} */ (this.blankRow.cloneNode(true));
    this.#fill(row, []);
    this.body.append(row);
    this.#showLeaveOut();
  }

  /** @param {HTMLTableRowElement} row */
  #controls(row) {
    /** @type {NodeListOf<HTMLInputElement | HTMLSelectElement>} */
    const controls = row.querySelectorAll("input, select");
    return [...controls];
  }

  #showLeaveOut() {
    for (const button of this.body.querySelectorAll(".leave-out")) button.hidden = false;
  }
}

/**
 * The text that a control was built with.
 * @param {Control} control
 */
export function builtText(control) {
  if (!(control instanceof HTMLSelectElement)) return control.defaultValue;
  return ([...control.options].find((option) => option.defaultSelected) ?? control.options[0])?.value ?? "";
}

/**
 * Rows as a list of lists of texts, or null where the text holds anything else.
 * @param {string} text
 * @returns {string[][] | null}
 */
function rowsIn(text) {
  try {
    const rows = JSON.parse(text);
    const sound =
      Array.isArray(rows) && rows.every((row) => Array.isArray(row) && row.every((cell) => typeof cell === "string"));
    return sound ? rows : null;
  } catch {
    return null;
  }
}
