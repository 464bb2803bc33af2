/** One calculator on a page: its blanks, and the answer that Python made for them. */
import morphdom from "morphdom";
import { keepTyped, keptAs, nameOf, ruler, typedIn } from "../keeping/kept.js";
import { SharedBlanks } from "../keeping/shared-blanks.js";
import { clear, notice } from "../notices/notices.js";
import { carried, dressOnward } from "./carried.js";
import { changeUnder, dressDrawing } from "./drawings.js";
import { offerToBegin } from "./job-links.js";
import { LastChange } from "./last-change.js";
import { dressPlayed } from "./played.js";
import { builtText, inWords, named, RowsTable } from "./rows.js";
import { unfold } from "./unfold.js";

/**
 * @import { Texts } from "../keeping/kept.js"
 * @import { Reply } from "../python/messages.js"
 * @import { Standing } from "./last-change.js"
 *
 * @typedef {(names: string[]) => void} Changed hears the names of the blanks that the reader has changed
 *
 * Where what is typed is found and left.
 * @typedef {object} Keeper
 * @property {(name: string) => {texts: Texts, readOn: string, refused: Texts}} read
 * @property {(name: string, texts: Texts, readOn: string, calculator: string, latest: string, refused: Texts) => void}
 *   keep
 * @property {boolean} knowsInHand whether what is in hand stands in its blanks
 *
 * What holds a field's text.
 * @typedef {object} Holder
 * @property {HTMLElement} element
 * @property {string} value
 * @property {string} built
 * @property {(inTrouble: boolean) => void} markTrouble
 * @property {(text?: string) => boolean} [takes]
 * @property {(text: string) => string} told a text that stood here, in a reader's words
 *
 * A text for a blank, or for a cell of a table.
 * @typedef {{name: string, text: string, row: number | null, column: number}} Setting
 */

export class Section {
  /**
   * @param {HTMLElement} element the calculator's section
   * @param {Changed} changed
   * @param {Keeper} [keeper]
   */
  constructor(element, changed, keeper = LOOSE) {
    this.element = element;
    /** @type {HTMLFormElement} */
    this.form = element.querySelector("form.asked");
    this.answer = element.querySelector(".answer");
    // what was done here last
    this.told = Object.assign(document.createElement("div"), { className: "told-here", role: "status" });
    this.form.append(this.told);
    this.oldAnswer = element.querySelector(".old-answer");
    this.calculator = /** @type {string} */ (element.dataset.calculator);
    /** @type {Texts} */
    this.given = JSON.parse(/** @type {string} */ (element.dataset.given));
    this.name = nameOf(this.calculator, this.given, element.closest(".walk")?.dataset.walk);
    this.keeper = keeper;
    this.changed = changed;
    this.isChanging = false; // whether what changes just now does so by this calculator
    /** @type {Texts} */
    this.shown = {}; // what stands in every field, once it has come to rest
    this.last = new LastChange(this.form.querySelector(".undo"), {
      look: (name) => this.#look(name),
      say: (name, text) => this.#blank(name).told(text),
      bring: (all) => this.#bring(all),
    });
    this.shared = new SharedBlanks(
      JSON.parse(element.dataset.inHand ?? "{}"),
      () => keeper.knowsInHand,
      (name) => this.#blank(name)?.value ?? this.given[name],
    );
    /** @type {Texts} */
    this.typed = this.written = /** @type {Texts} */ ({});
    this.readOn = ""; // the ruler on which a bare number is meant
    /** @type {Texts} */
    this.refused = {}; // of what was typed and cannot be read: the sentence that says so
    this.hasAnswered = false; // whether the answer in the page is to numbers that were asked about since it was opened
    // of what was typed since the page was last read on one ruler: the ruler on which each is meant
    /** @type {Map<string, string>} */
    this.rulers = new Map();
    this.kept = ""; // what the keeper was last given
    this.leftEmpty = ""; // the blank that was emptied and left, until it is told what counts there
    // where blanks wait behind a line to tap
    this.folds = /** @type {HTMLDetailsElement[]} */ (
      [this.form.closest("details.asked-besides"), this.form.querySelector("details.more")].filter(Boolean)
    );
    /** @type {Set<HTMLDetailsElement>} */
    this.unfolded = new Set(); // those opened for the sake of a refused blank, not by the reader
    /** @type {Map<string, RowsTable>} */
    this.tables = new Map();
    for (const table of /** @type {NodeListOf<HTMLTableElement>} */ (this.form.querySelectorAll("table.rows"))) {
      const { field } = /** @type {{field: string}} */ (/** @type {unknown} */ (table.dataset));
      this.tables.set(field, new RowsTable(table, (cell) => this.#type(field, cell)));
    }
    this.form.addEventListener("input", ({ target }) => target.name && this.#type(target.name, target));
    this.form.addEventListener("change", ({ target }) => this.#leave(target));
    this.form.addEventListener(
      "click",
      ({ target }) => target.closest(".refusal button") && this.#putInstead(target.closest(".refusal button")),
    );
    this.#afresh().addEventListener("click", () => this.#startAfresh());
    this.form.querySelector(".carry").addEventListener("click", (event) => this.#copyLink(event));
    this.answer.addEventListener(
      "click",
      ({ target }) => target.matches("button.offer") && this.#takeUp(/** @type {any} */ (target.dataset)),
    );
    this.#dressAnswer(this.answer);
    this.saidAtFirst = this.says.text;
    const { texts, readOn, refused } = keeper.read(this.name);
    const early = this.#early();
    this.shared.type(...Object.entries(early).map(inHandAs(ruler())));
    this.hold(
      { ...texts, ...early },
      readOn,
      Object.fromEntries(
        Object.entries(refused ?? {}).filter(([name]) => Object.hasOwn(texts, name) && !Object.hasOwn(early, name)),
      ),
    );
    if (Object.keys(early).length) this.#keep();
  }

  /**
   * Let the blanks of measures in hand show them; what stands in the blank in use is left to the reader, but for one
   * she has just left empty.
   * @param {string} [left]
   * @returns {boolean} whether anything is different here now
   */
  follow(left) {
    const before = JSON.stringify([this.typed, this.rulersInUse]);
    for (const name of this.shared.fields) {
      const blank = this.#blank(name);
      if (!blank || (hasFocus(blank) && Object.hasOwn(this.typed, name) && name !== left)) continue;
      const there = this.shared.found(name);
      const isSame = there?.text === this.typed[name] || there?.text === this.written[name];
      if (!isSame && !this.isChanging) this.last.forget([name]);
      delete this.refused[name];
      if (!there) {
        delete this.typed[name];
        continue;
      }
      if (this.typed[name] !== there.text) delete this.written[name];
      this.typed[name] = blank.value = there.text;
      this.rulers.set(name, there.readOn);
      if (there.refused) this.refused[name] = there.refused;
    }
    return JSON.stringify([this.typed, this.rulersInUse]) !== before;
  }

  /** What the reader wrote before this script came, as on a slow connection. */
  #early() {
    /** @type {[string, Holder][]} */
    const blanks = this.#names.map((name) => [name, this.#blank(name)]);
    return Object.fromEntries(
      blanks.filter(([, blank]) => blank.value !== blank.built).map(([name, blank]) => [name, blank.value]),
    );
  }

  /**
   * Let these numbers stand here in place of all that did; what stands in the blank in use is left to the reader. Those
   * that could not be read are at once marked as such, and no answer is taken for theirs.
   * @param {Texts} texts @param {string} readOn @param {Texts} [refused]
   */
  hold(texts, readOn, refused = {}) {
    const before = this.typed;
    this.last.forget();
    this.refused = { ...refused };
    [this.typed, this.written, this.readOn, this.kept] = [{}, {}, readOn, ""];
    this.rulers.clear();
    for (const [name, text] of Object.entries(texts)) {
      const blank = this.#blank(name);
      if (!blank) continue;
      if (this.shared.has(name)) {
        // kept for this page alone by an earlier edition: it comes in hand, unless something newer is
        if (!this.shared.found(name)) this.shared.type([name, { text, readOn }]);
        continue;
      }
      this.typed[name] = hasFocus(blank) && Object.hasOwn(before, name) ? before[name] : text;
      blank.value = this.typed[name];
    }
    this.follow();
    if (Object.keys(this.refused).length) {
      this.#markTroubles(this.refused);
      this.keepOld();
    }
    this.#dress();
  }

  /**
   * What is kept under these names has come back after this page was filled.
   * @param {Set<string>} names
   */
  readAgain(names) {
    if (!names.has(keptAs(this.name))) return void this.follow();
    const { texts, readOn, refused } = this.keeper.read(this.name);
    this.hold(texts, readOn, refused);
  }

  /**
   * Take over numbers that a link carried, as if the reader had typed them.
   * @param {Texts} texts
   */
  take(texts) {
    this.last.begin(Object.keys(texts).filter((name) => this.#blank(name)));
    for (const [name, text] of Object.entries(texts)) {
      const blank = this.#blank(name);
      if (!blank) continue;
      blank.value = text;
      this.typed[name] = blank.value;
    }
    this.shared.type(...Object.entries(this.typed).map(inHandAs(this.readOn)));
    this.#keep();
  }

  /**
   * Texts in which further rows stand below her own; the rows that the page came with are not hers.
   * @param {Record<string, string>} texts field → rows
   */
  withMore(texts) {
    return Object.fromEntries(
      Object.entries(texts).map(([name, rows]) => [
        name,
        Object.hasOwn(this.typed, name) ? (this.tables.get(name)?.withMore(rows) ?? rows) : rows,
      ]),
    );
  }

  /**
   * Take over what was written, or emptied, in the blanks of the same names in another calculator.
   * @returns {boolean} whether anything is different here now
   * @param {Section} other @param {string[]} names
   */
  takeFrom(other, names) {
    if (this.isAlone || other.isAlone) return false;
    const shared = names.filter(
      (name) =>
        !this.shared.has(name) &&
        !other.shared.has(name) && // what is in hand is not what a page has of its own
        this.typed[name] !== other.typed[name] &&
        this.#blank(name)?.takes?.(other.typed[name]),
    );
    for (const name of shared) {
      delete this.typed[name];
      delete this.written[name];
      this.rulers.set(name, other.rulerOf(name));
      if (Object.hasOwn(other.typed, name)) this.typed[name] = this.#blank(name).value = other.typed[name];
    }
    this.last.forget(shared);
    if (shared.length) this.#keep();
    return shared.length > 0;
  }

  /** Whether its blanks are its own, even where another of the page has one of that name. */
  get isAlone() {
    return this.element.hasAttribute("data-alone");
  }

  get isTyped() {
    return Object.keys(this.typed).length > 0;
  }

  /**
   * The ruler on which a bare number in this blank is meant.
   * @param {string} name
   */
  rulerOf(name) {
    return this.rulers.get(name) ?? this.readOn;
  }

  /** The rulers that are in use here. */
  get rulersInUse() {
    return [this.readOn, ...Object.keys(this.typed).map((name) => this.rulerOf(name))];
  }

  /**
   * What was typed on one ruler.
   * @param {string} readOn
   */
  typedOn(readOn) {
    return Object.fromEntries(Object.entries(this.typed).filter(([name]) => this.rulerOf(name) === readOn));
  }

  /**
   * What was typed on one ruler was read: with its units written it means the same on another.
   * @param {Texts} written @param {string} from @param {string} to
   */
  carryOver(written, from, to) {
    for (const name of Object.keys(this.typedOn(from))) {
      if (Object.hasOwn(written, name)) this.typed[name] = this.#blank(name).value = written[name];
      this.rulers.set(name, to);
    }
    if (this.readOn === from) this.readOn = to;
    this.#keep();
  }

  /**
   * Every number that was typed without its unit gets the one it was read in, so that it keeps its meaning on another
   * ruler.
   * @param {Texts} written @param {string} readOn
   */
  settle(written, readOn) {
    this.written = written;
    this.rulers.clear();
    for (const [name, text] of Object.entries(written).filter(([name]) => Object.hasOwn(this.typed, name))) {
      const blank = this.#blank(name);
      if (!hasFocus(blank)) this.typed[name] = blank.value = text;
    }
    this.readOn = readOn;
    this.#keep();
  }

  /**
   * Show what Python said: an answer, sentences at their blanks, or that this waits for another calculator.
   * @param {Reply} reply
   */
  show(reply) {
    this.refused = Object.fromEntries(
      Object.entries(reply.refusals ?? {}).filter(([name]) => Object.hasOwn(this.typed, name)),
    );
    this.#markTroubles(reply.refusals ?? {}, reply.instead);
    for (const [name, choices] of Object.entries(reply.choices ?? {})) {
      const list = /** @type {Blank} */ (this.#blank(name));
      list.offer(choices);
    }
    for (const [name, text] of Object.entries(reply.texts ?? {}))
      if (!Object.hasOwn(this.typed, name)) this.#blank(name).value = text;
    this.#tellLeftEmpty();
    this.settle(reply.written, this.readOn);
    if (reply.answer === undefined) return this.keepOld(reply.waits);
    this.#age("");
    this.hasAnswered = true;
    this.#replaceAnswer(reply.answer);
  }

  /**
   * Leave the last good answer standing, marked as old; without a sentence of its own, the one in the page serves.
   * @param {string} [sentence]
   */
  keepOld(sentence) {
    this.#age(sentence ?? (this.hasAnswered ? (this.oldAnswer.dataset.usual ?? this.oldAnswer.textContent) : NOT_HERS));
  }

  /** What it says now, and whether its answer waits for something, as another calculator does for a refused blank. */
  get says() {
    const refusal = [.../** @type {NodeListOf<Refusal>} */ (this.form.querySelectorAll(".refusal"))].find(
      ({ hidden }) => !hidden,
    );
    const said = refusal ?? (this.oldAnswer.hidden ? this.answer.querySelector(".spoken, .trouble") : this.oldAnswer);
    const words = [...(said?.childNodes ?? [])].filter(({ nodeName }) => nodeName !== "BUTTON");
    return {
      text: words
        .map(({ textContent }) => textContent)
        .join("")
        .trim(),
      waits: said === this.oldAnswer,
    };
  }

  /**
   * Whether the answer is about to change: a screen reader then waits for it.
   * @param {boolean} awaited
   */
  isAwaited(awaited) {
    this.answer.ariaBusy = String(awaited);
  }

  /** @param {string} sentence */
  #age(sentence) {
    this.oldAnswer.dataset.usual ??= this.oldAnswer.textContent;
    this.answer.classList.toggle("is-old", sentence !== "");
    if (this.oldAnswer.hidden && sentence === "") return;
    this.oldAnswer.hidden = sentence === "";
    this.oldAnswer.textContent = sentence || this.oldAnswer.dataset.usual;
  }

  /**
   * @param {Texts} refusals
   * @param {Texts} [instead] what can stand in a blank in place of what was refused
   */
  #markTroubles(refusals, instead = {}) {
    for (const place of /** @type {NodeListOf<Refusal>} */ (this.form.querySelectorAll(".refusal"))) {
      const sentence = refusals[place.dataset.field] ?? "";
      const text = instead[place.dataset.field];
      if (place.textContent === sentence && place.hidden === !sentence && !text) continue; // as nearly always
      place.textContent = sentence;
      if (text)
        place.append(
          " ",
          Object.assign(document.createElement("button"), {
            type: "button",
            textContent: `Make it ${text}`,
            value: text,
          }),
        );
      place.hidden = !sentence;
      this.#blank(place.dataset.field).markTrouble(Boolean(sentence));
      for (const fold of this.folds.filter((each) => sentence && each.contains(place) && !each.open)) {
        fold.open = true;
        this.unfolded.add(fold);
      }
      if (sentence) this.#leadTo(place.dataset.field);
    }
    this.#foldAgain();
  }

  /**
   * What was unfolded for a refused blank, as while a number is half typed, is as the reader left it once nothing in it
   * is refused.
   */
  #foldAgain() {
    for (const fold of [...this.unfolded].filter((each) => !each.querySelector(".refusal:not([hidden])"))) {
      this.unfolded.delete(fold);
      if (!fold.contains(document.activeElement)) fold.open = false;
    }
  }

  /**
   * A link from elsewhere to a blank that needs mending leads to the very blank, once.
   * @param {string} name
   */
  #leadTo(name) {
    const control = /** @type {Control} */ (this.form.elements.namedItem(name));
    if (this.hasLed || !control || location.hash !== `#${control.id}`) return;
    this.hasLed = true;
    unfold(control);
    control.scrollIntoView({ block: "center" });
    control.focus();
  }

  /**
   * Change what has changed, and leave alone what has not: what is pointed at, opened or scrolled to stays so.
   * @param {string} html
   */
  #replaceAnswer(html) {
    const open = new Set([...this.answer.querySelectorAll("details[open]")].map((each) => each.className));
    const template = document.createElement("template");
    template.innerHTML = `<div>${html}</div>`; // made by Python as elements: whatever was typed is escaped in it
    const made = /** @type {HTMLElement} */ (template.content.firstChild);
    for (const details of made.querySelectorAll("details")) details.open = open.has(details.className);
    this.#dressAnswer(made);
    const [spoken, next] = [this.answer, made].map((each) => each.querySelector(".spoken"));
    // whole, so that whoever repeats it elsewhere sees that it is another
    if (!spoken.isEqualNode(next)) spoken.replaceChildren(...next.cloneNode(true).childNodes);
    changeUnder(this.answer, () =>
      morphdom(this.answer, made, { childrenOnly: true, onBeforeElUpdated: (now, next) => !now.isEqualNode(next) }),
    );
  }

  /**
   * Let what needs a script be used in an answer, whether it stands in the page yet or not.
   * @param {HTMLElement} answer
   */
  #dressAnswer(answer) {
    dressDrawing(answer, this.element);
    dressPlayed(answer, this.element);
    for (const button of answer.querySelectorAll("button.offer")) button.hidden = false;
    dressOnward(answer);
  }

  /**
   * Do what an answer offers, as if the reader had chosen it in the blanks; there she then stands, and is told of it.
   * @param {{sets: string, does: string}} offer
   */
  #takeUp({ sets, does }) {
    /** @type {Setting[]} */
    const wanted = JSON.parse(sets).map(
      (/** @type {[string, string, number | null, number]} */ [name, text, row, column]) => ({
        name,
        text,
        row,
        column,
      }),
    );
    const names = [...new Set(wanted.map(({ name }) => name))];
    this.last.asOne(names, () => {
      for (const each of wanted) {
        const control = this.#control(each);
        control.value = each.text;
        control.dispatchEvent(new Event("input", { bubbles: true }));
      }
    });
    this.#control(wanted[wanted.length - 1]).focus();
    notice(OFFER, `Done: ${does}.`, { passes: true, place: this.told });
  }

  /** @param {HTMLElement & {value?: string}} button */
  #putInstead(button) {
    const { field } = /** @type {Refusal} */ (button.closest(".refusal")).dataset;
    const control = /** @type {Control} */ (this.form.elements.namedItem(field));
    control.value = /** @type {string} */ (button.value);
    control.focus();
    for (const kind of ["input", "change"]) control.dispatchEvent(new Event(kind, { bubbles: true }));
  }

  /**
   * A single control, or the control of a cell.
   * @param {{name: string, row: number | null, column: number}} place
   */
  #control({ name, row, column }) {
    return /** @type {Control} */ (
      row === null ? this.form.elements.namedItem(name) : this.tables.get(name)?.control(row, column)
    );
  }

  /** @param {string} name @param {unknown} [where] the blank in which she types */
  #type(name, where) {
    clear(OFFER);
    this.last.begin([name], where);
    this.isChanging = true;
    this.typed[name] = this.#blank(name).value;
    delete this.written[name];
    delete this.refused[name];
    this.rulers.set(name, ruler());
    // what another blank says may be part of what a measure is known as: size of which kind, such as cut or finished
    const unknown = Object.keys(this.typed).filter((each) => this.shared.has(each) && !this.shared.found(each));
    this.shared.type(
      ...unknown.map((each) => inHandAs(this.rulerOf(each))([each, this.typed[each]])),
      inHandAs(ruler())([name, this.typed[name]]),
    );
    this.follow();
    this.#keep(ruler());
    this.isChanging = false;
    this.changed([name]);
  }

  /** @param {string} name @returns {Standing} */
  #look(name) {
    return {
      shown: this.shown[name],
      typed: this.typed[name],
      readOn: this.rulerOf(name),
      inHand: this.shared.underEveryName(name),
    };
  }

  /**
   * Let fields stand as they did, as if it were typed again or put back.
   * @param {Map<string, Standing>} all
   */
  #bring(all) {
    clear(OFFER);
    this.isChanging = true;
    for (const [name, { shown, typed, readOn }] of all) {
      delete this.typed[name];
      delete this.written[name];
      delete this.refused[name];
      if (typed !== undefined) this.typed[name] = typed;
      this.rulers.set(name, readOn);
      this.#blank(name).value = shown;
    }
    this.shared.write([...all.values()].flatMap(({ inHand }) => inHand));
    this.follow();
    this.#keep([...all.values()][0].readOn);
    this.isChanging = false;
    this.changed([...all.keys()]);
  }

  /**
   * On leaving a blank: add the unit it was read in; one that was emptied is the house's again.
   * @param {Control} target
   */
  #leave(target) {
    this.last.end();
    this.isChanging = true;
    const name = /** @type {string} */ (target.name || target.closest("table.rows")?.dataset.field);
    const blank = this.#blank(name);
    if (!blank.value.trim()) {
      this.leftEmpty = name;
      delete this.typed[name];
      delete this.refused[name];
      this.shared.type([name]);
      this.follow(name);
      this.changed([name]);
    } else if (this.written[name] && Object.hasOwn(this.typed, name)) {
      this.typed[name] = blank.value = this.written[name];
    }
    this.#keep();
    this.isChanging = false;
  }

  /** Say what counts where a blank was left empty. */
  #tellLeftEmpty() {
    const blank = this.leftEmpty ? this.#blank(this.leftEmpty) : null;
    if (blank?.value.trim() && !Object.hasOwn(this.typed, this.leftEmpty))
      notice(LEFT_EMPTY, `Left empty, so the usual counts: ${blank.told(blank.value)}.`, {
        passes: true,
        place: this.told,
      });
    this.leftEmpty = "";
  }

  #startAfresh() {
    const names = Object.keys(this.typed);
    this.last.begin(names);
    this.isChanging = true;
    this.shared.putDown(names);
    this.typed = this.refused = {};
    this.follow();
    this.#keep();
    this.isChanging = false;
    this.changed(names);
    this.form.querySelector("input, select").focus();
  }

  /** @param {string} [latest] the ruler on which what has changed is meant */
  #keep(latest = this.readOn) {
    const own = Object.entries(this.typed).filter(([name]) => !this.shared.has(name));
    const rulers = new Set(own.map(([name]) => this.rulerOf(name)));
    const readOn = rulers.size === 1 ? [...rulers][0] : this.readOn;
    const refused = Object.fromEntries(Object.entries(this.refused).filter(([name]) => !this.shared.has(name)));
    const state = JSON.stringify([own, readOn, refused]);
    if (state !== this.kept)
      this.keeper.keep(this.name, Object.fromEntries(own), readOn, this.calculator, latest, refused);
    this.shared.settle(
      Object.entries(this.typed).map(([name, text]) => [
        name,
        { text, readOn: this.rulerOf(name), refused: this.refused[name] },
      ]),
    );
    this.kept = state;
    this.#dress();
  }

  #dress() {
    this.#afresh().hidden = !this.isTyped;
    offerToBegin(this.form.querySelector(".begin-job"), this.isTyped);
    this.shown = Object.fromEntries(this.#names.map((name) => [name, this.#blank(name).value]));
    this.#carry();
    for (const way of this.form.querySelectorAll(".tools > :not([hidden])")) way.classList.add("has-place");
    this.last.tell();
  }

  /** The link that carries every number as it stands, the house's own among them. */
  #carry() {
    /** @type {HTMLAnchorElement} */
    const link = this.form.querySelector(".carry");
    const address = carried(this.name, this.shown);
    if (link.getAttribute("href") !== address) link.textContent = link.dataset.usual ?? link.textContent;
    link.href = address;
    link.hidden = !this.isTyped;
  }

  /** @param {MouseEvent} event */
  async #copyLink(event) {
    const link = /** @type {HTMLAnchorElement} */ (event.currentTarget);
    event.preventDefault();
    event.stopPropagation(); // else the theme opens the page anew
    link.dataset.usual ??= link.textContent;
    try {
      await navigator.clipboard.writeText(link.href);
      link.textContent = "Link copied"; // until a number changes
    } catch {
      location.assign(link.href); // it then stands in the address, to be copied there
    }
  }

  /** Every field of the form. */
  get #names() {
    return [.../** @type {NodeListOf<Refusal>} */ (this.form.querySelectorAll(".refusal"))].map(
      ({ dataset }) => dataset.field,
    );
  }

  #afresh() {
    return this.form.querySelector(".afresh");
  }

  /**
   * What holds a field's text: a table of rows, or a single control.
   * @param {string} name
   */
  #blank(name) {
    const control = this.form.elements.namedItem(name);
    return /** @type {Holder} */ (this.tables.get(name) ?? (control && new Blank(/** @type {Control} */ (control))));
  }
}

/** A single control. */
class Blank {
  /** @param {Control} control */
  constructor(control) {
    this.element = control;
  }

  get value() {
    return this.element.value;
  }

  /** What the page was built with. */
  get built() {
    return builtText(this.element);
  }

  set value(text) {
    if (this.element.value === text) return;
    const control = this.element;
    const isWhole =
      control === document.activeElement &&
      control instanceof HTMLInputElement &&
      control.selectionStart === 0 &&
      control.selectionEnd === control.value.length;
    control.value = text;
    if (isWhole) control.select(); // what she came to is still what her typing replaces
    if (this.element.value === text || this.element.localName !== "select") return;
    // not on offer here, and hers all the same: Python says what is wrong with it
    this.element.append(new Option(text, text));
    this.element.value = text;
  }

  /** @param {string} text */
  told(text) {
    const label = this.element.labels?.[0];
    const name = (label?.querySelector(".blank-name") ?? label)?.textContent ?? "";
    return named(name, inWords(this.element, text));
  }

  /** Whether this text, or none, can stand here. */
  takes(text = "") {
    return (
      this.element.localName !== "select" ||
      text === "" ||
      [.../** @type {HTMLSelectElement} */ (this.element).options].some(({ value }) => value === text)
    );
  }

  /**
   * Let a list offer these: pairs of what is kept and the words for it.
   * @param {[kept: string, words: string][]} choices
   */
  offer(choices) {
    const now = [.../** @type {HTMLSelectElement} */ (this.element).options].map(({ value, text }) => [value, text]);
    if (JSON.stringify(now) === JSON.stringify(choices)) return;
    const { value } = this;
    this.element.replaceChildren(...choices.map(([kept, words]) => new Option(words, kept)));
    this.value = value;
  }

  /** @param {boolean} inTrouble */
  markTrouble(inTrouble) {
    this.element.setAttribute("aria-invalid", String(inTrouble));
  }
}

/**
 * The numbers of this browser that belong to no job.
 * @type {Keeper}
 */
const LOOSE = {
  read: typedIn,
  knowsInHand: true,
  keep: (name, texts, readOn, _calculator, _latest, refused) => keepTyped(name, texts, readOn, refused),
};

const NOT_HERS = "This answer is for the numbers this page came with. Correct the marked box and it will update.";

const OFFER = "offer"; // the notice about what was taken up
const LEFT_EMPTY = "left empty"; // the notice about what counts in place of nothing

/**
 * @param {string} readOn
 * @returns {(typed: [field: string, text: string]) => [field: string, typed: import("../keeping/in-hand.js").Measure]}
 */
const inHandAs =
  (readOn) =>
  ([field, text]) => [field, { text, readOn }];

/** @typedef {HTMLElement & {dataset: {field: string}}} Refusal where a blank's refusal stands */

/** @param {Holder} blank */
const hasFocus = (blank) => blank.element.contains(document.activeElement);
