/**
 * A table of blanks, one row for each thing asked about. Its text is the rows as JSON: a list of lists of texts. On a
 * phone a row is one line until it is tapped (a style sheet folds it).
 */

export class RowsTable {
  /**
   * @param {HTMLTableElement} table
   * @param {(cell?: HTMLElement) => void} changed is called when a cell, or the number of rows, has changed
   */
  constructor(table, changed) {
    this.element = table;
    this.body = table.tBodies[0];
    /** @type {Set<Element>} */
    this.opened = new Set(); // what was opened for the sake of a refusal, not by the reader
    /** @type {[between: string, places: number[]][]} */
    this.line = JSON.parse(/** @type {string} */ (table.dataset.line));
    /** @type {[place: string, labels: Record<string, string>][]} */
    this.called = Object.entries(JSON.parse(table.dataset.called ?? "{}"));
    this.blankRow = /** @type {HTMLTableRowElement} */ (this.body.rows[0].cloneNode(true));
    const oneMore = /** @type {HTMLElement} */ (table.parentElement).querySelector(".one-more");
    oneMore.hidden = false;
    oneMore.addEventListener("click", () => {
      this.#add();
      const row = this.body.rows[this.body.rows.length - 1];
      open(row, ".open-row");
      this.#controls(row)[0].focus();
      changed();
    });
    this.body.addEventListener("input", ({ target }) => {
      this.#tell(target.closest("tr"));
      changed(target);
    });
    this.body.addEventListener("click", ({ target }) => {
      const way = WAYS_IN.find((each) => target.matches(each));
      if (way) {
        open(target.closest("tr"), way, isShut(target));
        this.opened.delete(target);
      }
      if (!target.matches(".leave-out")) return;
      target.closest("tr").remove();
      if (!this.body.rows.length) this.#add();
      oneMore.focus();
      changed();
    });
    this.#showLeaveOut();
    const inUse = /** @type {HTMLTableRowElement | null} */ (document.activeElement?.closest("tr"));
    if (inUse && this.body.contains(inUse)) openWhole(inUse);
    table.classList.add("live"); // until then a row is open while it is in use
  }

  get value() {
    return this.#text((control) => control.value);
  }

  /**
   * What a cell is filled in with, if there still is such a row, which is then open.
   * @param {number} row @param {number} column
   */
  control(row, column) {
    const found = this.body.rows[row];
    if (!found) return undefined;
    openWhole(found);
    return this.#controls(found)[column];
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

  /**
   * The rows that stand here with further ones below them, rows in which nothing is written left out.
   * @param {string} text
   */
  withMore(text) {
    const own = (rowsIn(this.value) ?? []).filter((row) => row.some((cell, at) => cell !== this.#blankCells[at]));
    return JSON.stringify([...own, ...(rowsIn(text) ?? [])]);
  }

  /** What stands in a row that nobody has written in yet. */
  get #blankCells() {
    return this.#controls(this.blankRow).map((control) => (takesNothing(control) ? "" : builtText(control)));
  }

  /**
   * A row in trouble is seen: whoever is not writing in one of them has all of them open. Once there is none, as when a
   * number elsewhere was only half typed, they are as she left them.
   * @param {boolean} inTrouble
   */
  markTrouble(inTrouble) {
    this.element.classList.toggle("in-trouble", inTrouble);
    if (!inTrouble) this.#shutAgain();
    else if (!this.body.contains(document.activeElement)) {
      const shut = this.body.querySelectorAll(WAYS_IN.map((way) => `${way}[aria-expanded=false]`).join());
      for (const way of shut) this.opened.add(way);
      [...this.body.rows].forEach(openWhole);
    }
  }

  #shutAgain() {
    if (this.body.contains(document.activeElement)) return;
    for (const way of this.opened) way.ariaExpanded = "false";
    this.opened.clear();
  }

  /**
   * What stood here, in a reader's words: the one cell in which it was something else, or the rows as a whole.
   * @param {string} text
   */
  told(text) {
    const [before, now] = [rowsIn(text) ?? [], rowsIn(this.value) ?? []];
    const cells = before.flatMap((row, at) => row.map((cell, column) => ({ at, column, cell })));
    const others = cells.filter(({ at, column, cell }) => now[at]?.[column] !== cell);
    const whole = `${this.element.caption?.textContent ?? ""} as before`;
    if (before.length !== now.length || others.length !== 1) return whole;
    const [{ at, column, cell }] = others;
    const control = this.#controls(this.body.rows[at])[column];
    return named(control.closest("td").dataset.label ?? "", inWords(control, cell));
  }

  /** @param {HTMLTableRowElement} row @param {string[]} cells */
  #fill(row, cells) {
    this.#controls(row).forEach((control, index) => {
      if (cells[index] || takesNothing(control)) control.value = cells[index] ?? "";
    });
    this.#tell(row);
  }

  /**
   * The line of a row says what now stands in it, as Python wrote it (calculators/asking/rows.py), and its blanks are
   * called by what its first holds.
   * @param {HTMLTableRowElement} row
   */
  #tell(row) {
    const controls = this.#controls(row);
    for (const [place, labels] of this.called) {
      const control = controls[Number(place)];
      const label = labels[controls[0].value] ?? labels[""];
      control.setAttribute("aria-label", label);
      /** @type {HTMLElement} */ (control.closest("td")).dataset.label = label;
    }
    const texts = controls.map((control) => inWords(control, control.value.trim()));
    const groups = this.line.map(([between, places]) =>
      places
        .map((at) => texts[at])
        .filter(Boolean)
        .join(between),
    );
    const told = groups.filter(Boolean).join(", ") || this.element.dataset.one;
    /** @type {HTMLElement} */ (row.querySelector(".open-row")).textContent = /** @type {string} */ (told);
  }

  #add() {
    const row = /** @type {HTMLTableRowElement} */ (this.blankRow.cloneNode(true));
    for (const way of WAYS_IN) open(row, way, false);
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

const WAYS_IN = [".open-row", ".open-more"];

/**
 * Whether a cell may hold no text: a list only where that is one of its choices.
 * @param {Control} control
 */
const takesNothing = (control) =>
  !(control instanceof HTMLSelectElement) || [...control.options].some(({ value }) => value === "");

/** @param {Element} button */
const isShut = (button) => button.getAttribute("aria-expanded") === "false";

/**
 * Open a row, or what is rarer in it, or shut it.
 * @param {HTMLTableRowElement} row @param {string} way
 */
function open(row, way, isOpen = true) {
  row.querySelector(way)?.setAttribute("aria-expanded", String(isOpen));
}

/** @param {HTMLTableRowElement} row */
function openWhole(row) {
  for (const way of WAYS_IN) open(row, way);
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
 * What is kept for a blank, as it reads there.
 * @param {Control} control @param {string} text
 */
export function inWords(control, text) {
  const options = control instanceof HTMLSelectElement ? [...control.options] : [];
  return options.find(({ value }) => value === text)?.text ?? text;
}

/** What a blank is called, with what stood in it. @param {string} label @param {string} words */
export const named = (label, words) => `${label[0]?.toLowerCase() ?? ""}${label.slice(1)} ${words || "left empty"}`;

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
