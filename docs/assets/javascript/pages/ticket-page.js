/** The work ticket of the job in hand, or of the batch as it is filled in now: kept up to date, ticked, measured. */

import { Drafts } from "../keeping/drafts.js";
import { askHouse, onFollow, ready } from "../keeping/following.js";
import { Held } from "../keeping/held.js";
import { measures } from "../keeping/in-hand.js";
import { jobInHand, keepTyped, nameOf, ruler, takeInHand, typedIn } from "../keeping/kept.js";
import { putBack } from "../keeping/put-back.js";
import { RefusedTexts } from "../keeping/refused-texts.js";
import { SharedBlanks } from "../keeping/shared-blanks.js";
import { last, onChange, whyNothingLasts } from "../keeping/store.js";
import { Question } from "../python/messages.js";
import { AtMachine } from "./at-machine.js";

const MARK = "#job=";
const GONE =
  "This job is not kept in this browser, so its ticket cannot be shown. " +
  "What stands here is the batch as it is filled in now.";
const LOOSE = "batch"; // what is ticked for the batch that is kept as no job

const NOTHING_YET = { id: LOOSE, text: "", revision: 0 };

/** @param {Held} held */
const draftsOf = (held) => new Drafts(held.kind, held.id);
/** @param {Held} held */
const refusedIn = (held) => new RefusedTexts(`${held.kind}/${held.id}`);

/**
 * @import { Reply, Request } from "../python/messages.js"
 *
 * @typedef {{by: number} | {box: number}} Turn one bundle more or less, or the box of a piece turned
 */

class TicketPage {
  /** @type {Promise<any>} */
  #last = Promise.resolve();

  /** @param {HTMLElement} element */
  constructor(element) {
    this.element = element;
    this.isOpen = false; // whether what it is of is known
    this.held = new Held("loose", NOTHING_YET);
    this.refused = refusedIn(this.held);
    this.drafts = draftsOf(this.held);
    this.body = element.querySelector(".ticket-body");
    this.said = element.querySelector(".said");
    this.settled = element.querySelector(".settle");
    this.machine = new AtMachine(element, (step, by) => this.#turn(step, { by }));
    if (location.hash.startsWith(MARK)) {
      takeInHand(location.hash.slice(MARK.length));
      history.replaceState(history.state, "", location.pathname);
    }
    element
      .querySelector(".tools")
      .addEventListener("click", ({ target }) => this.#press(target.closest("[data-do]")?.dataset.do));
    this.settled.addEventListener("change", ({ target }) => this.#inTurn(() => this.#settle(target)));
    this.body.addEventListener("click", ({ target }) => {
      const { tick, box, step } = target.closest("[data-tick], [data-box]")?.dataset ?? {};
      if (step) this.#turn(step, box ? { box: Number(box) } : { by: Number(tick) });
    });
    for (const place of [this.body, this.settled])
      place.addEventListener("input", ({ target }) => this.#note(target.name, target.value));
    for (const left of /** @type {("change" | "focusout")[]} */ (["change", "focusout"])) {
      this.body.addEventListener(left, ({ target }) => target instanceof HTMLInputElement && this.#left(target));
    }
  }

  async start() {
    await ready;
    const told = await this.#inTurn(() => this.#open());
    document.querySelector(".ruler-choice select")?.addEventListener("change", () => this.#inTurn(() => this.#draw()));
    this.element.querySelector(".tools").hidden = false;
    this.#say(told || (await whyNothingLasts()));
    this.machine.goOn(this.held.id);
  }

  async #open() {
    const job = jobInHand();
    const record = job ? await last("job", job) : undefined;
    this.held = record ? new Held("job", record) : new Held("loose", (await last("loose", LOOSE)) ?? NOTHING_YET);
    this.refused = refusedIn(this.held);
    this.drafts = draftsOf(this.held);
    this.isOpen = true;
    const { said, typed } = await putBack(this.held, { ruler: ruler(), ...this.#ofTheWalk() });
    if (typed) this.#typed(typed);
    await this.#draw();
    return job && !record ? GONE : said;
  }

  /**
   * One thing after another, so that no button acts on what is still being kept.
   * @param {() => unknown} act
   */
  #inTurn(act) {
    this.#last = this.#last.then(act).catch((problem) => this.#say(problem.message));
    return this.#last;
  }

  /**
   * A question about this ticket; a loose batch brings the numbers that stand in the walk.
   * @param {Request["ask"]} question @param {string} kept @param {object} [more]
   */
  #ask(question, kept, more) {
    return askHouse({
      ask: question,
      kind: this.held.kind,
      kept,
      ruler: ruler(),
      home: this.element.dataset.home,
      ...this.#ofTheWalk(),
      ...more,
    });
  }

  #ofTheWalk() {
    if (this.held.kind === "job") return {};
    /** @type {Record<string, import("../keeping/kept.js").Texts>} */
    const typed = {};
    let readOn = ruler();
    for (const calculator of Object.keys(this.#knownAs)) {
      const { texts, readOn: on } = typedIn(this.#nameOf(calculator));
      const inHand = this.#inHand(calculator).texts;
      if (Object.keys(texts).length) readOn = on;
      if (Object.keys({ ...texts, ...inHand }).length) typed[calculator] = { ...texts, ...inHand };
    }
    return { typed, read_on: readOn, measures: measures() };
  }

  /** @param {string} calculator */
  #nameOf(calculator) {
    return nameOf(calculator, {}, this.element.dataset.walk);
  }

  /** @returns {Record<string, Record<string, string[]>>} calculator → what its fields are known as in hand */
  get #knownAs() {
    return JSON.parse(this.element.dataset.inHand ?? "{}");
  }

  /** @param {string} calculator */
  #inHand(calculator) {
    return new SharedBlanks(
      this.#knownAs[calculator] ?? {},
      () => true,
      () => "",
    );
  }

  async #draw() {
    const { body, settle, trouble } = await this.#ask(Question.TICKET, this.held.text);
    if (trouble) return this.#say(trouble);
    const before = document.activeElement;
    const written = before instanceof HTMLInputElement && this.body.contains(before) ? before : null;
    this.body.innerHTML = body; // made by Python as elements: whatever was typed is escaped in it
    /** @type {HTMLInputElement | null} */
    const inUse = written && this.body.querySelector(`[name="${CSS.escape(written.name)}"]`);
    if (written && inUse) {
      inUse.value = written.value; // kept once it is left
      inUse.focus({ preventScroll: true });
      inUse.setSelectionRange(written.selectionStart, written.selectionEnd);
    }
    this.settled.innerHTML = settle;
    for (const [name, { text, sentence }] of this.refused.all) this.#refuseAgain(name, text, sentence);
    this.element.querySelector(".of-what").hidden = true;
    this.element.classList.add("is-live");
    for (const each of this.element.querySelectorAll("[data-do]")) each.hidden = !settle;
    if (this.machine.isOn) settle ? this.machine.show() : this.machine.leave();
  }

  /** @param {string} name @param {string} text @param {string} sentence */
  #refuseAgain(name, text, sentence) {
    /** @type {HTMLInputElement | null} */
    const blank = this.element.querySelector(`:is(.settle, .ticket-body) input[name="${CSS.escape(name)}"]`);
    if (!blank) return;
    if (blank !== document.activeElement) blank.value = blank.dataset.sent = text;
    blank.setAttribute("aria-invalid", "true");
    if (blank.closest(".settle")) this.#refuse(name, sentence);
    else this.#compare(name, sentence, false);
  }

  /** @param {string} name @param {string} sentence */
  #refuse(name, sentence) {
    const place = this.settled.querySelector(`.refusal[data-field="${CSS.escape(name)}"]`);
    if (place) [place.textContent, place.hidden] = [sentence, false];
  }

  /** @param {string} [what] */
  #press(what) {
    if (what === "print") window.print();
    else if (what === "machine") this.machine.enter(this.held.id);
  }

  /** @param {string} name @param {string} text */
  #note(name, text) {
    const isOfTheWalk = name === "bundle" && this.held.kind === "loose";
    const was = isOfTheWalk ? (this.#inHand("bundles").texts.bundle ?? "") : undefined;
    this.drafts.note(name, text, this.held.revision, ruler(), was);
  }

  /** @param {string} step @param {Turn} what @returns {Promise<void>} */
  #turn(step, what) {
    this.#note(`ticks.${step}`, JSON.stringify(what));
    this.drafts.send([`ticks.${step}`]);
    return this.#inTurn(() => this.#tick(step, what));
  }

  /** @param {string} step @param {Turn} what */
  async #tick(step, what) {
    const place = () => this.body.querySelector(`[data-ticks="${CSS.escape(step)}"]`);
    const title = place().closest(".ticket-step").querySelector("h3").textContent;
    const reply = await this.#keep(
      Question.TICKET_TICK,
      { step, title, ...what },
      {
        [`ticks.${step}`]: JSON.stringify(what),
      },
    );
    if (!reply) return;
    renew(place(), reply.done);
    if (this.machine.isOn) this.machine.ticked();
  }

  /**
   * A blank for a size is left: what was written there is kept, if it is not yet.
   * @param {HTMLInputElement} blank
   */
  #left(blank) {
    if (!blank.closest(".size") || blank.value === (blank.dataset.sent ?? blank.defaultValue)) return;
    blank.dataset.sent = blank.value;
    this.#inTurn(() => this.#size(blank));
  }

  /** @param {HTMLInputElement} blank */
  async #size(blank) {
    const [piece, side] = blank.name.split(".");
    const text = blank.value;
    // what is kept as typed is refused anew by Python
    const reply = await this.#keep(Question.TICKET_SIZE, { piece, side, text }, { [blank.name]: text }, (reply) =>
      this.refused.note(blank.name, text, reply.all === undefined ? reply.refusal : ""),
    );
    if (!reply) return;
    blank.setAttribute("aria-invalid", String(Boolean(reply.refusal)));
    const isThere = this.#compare(blank.name, reply.refusal || reply.said, !reply.refusal && reply.within);
    if (reply.refusal && !isThere) this.#say(reply.refusal);
    if (reply.all === undefined) return; // not kept
    this.#compare(`${piece}.square`, reply.square, reply.is_square);
    this.body.querySelector(".all-sizes").innerHTML = reply.all; // made by Python as elements
    if (blank !== document.activeElement) blank.value = blank.dataset.sent = reply.shown;
  }

  /**
   * Say how something measured compares; whether there is a place for it.
   * @param {string} name @param {string} words @param {boolean} within
   */
  #compare(name, words, within) {
    const place = this.body.querySelector(`[data-size="${CSS.escape(name)}"]`);
    if (!place) return false;
    place.textContent = words;
    place.classList.toggle("off", !within);
    return true;
  }

  /** @param {Control} blank */
  async #settle(blank) {
    const { name, value: text } = blank;
    const reply = await this.#keep(Question.TICKET_SETTLE, { name, text }, { [name]: text }, (reply) => {
      this.refused.note(name, text, reply.refusal);
      if (reply.typed) this.#typed(reply.typed);
    });
    if (!reply) return;
    if (reply.refusal) {
      this.#refuse(name, reply.refusal);
      return blank.setAttribute("aria-invalid", "true");
    }
    await this.#draw();
    if (!this.body.contains(document.activeElement)) this.settled.querySelector(`[name="${name}"]`)?.focus();
  }

  /** @param {{calculator: string, field: string, text: string}} change */
  #typed({ calculator, field, text }) {
    const inHand = this.#inHand(calculator);
    if (inHand.has(field)) return inHand.type([field, text ? { text, readOn: ruler() } : undefined]);
    const { texts, readOn, refused } = typedIn(this.#nameOf(calculator));
    /** @param {Record<string, string>} texts */
    const without = ({ [field]: _, ...others }) => others;
    keepTyped(this.#nameOf(calculator), text ? { ...texts, [field]: text } : without(texts), readOn, without(refused));
  }

  /**
   * Have something changed and kept; the reply, or nothing where it could not be kept, which is then said.
   * @param {Request["ask"]} question @param {object} more
   * @param {import("../keeping/kept.js").Texts} texts blank → the text that was put down as a draft
   * @param {(reply: Reply) => void} [take] what to do with the reply before the draft is dropped
   * @returns {Promise<Reply | undefined>}
   */
  async #keep(question, more, texts, take = () => {}) {
    const { drafts, held } = this;
    drafts.send(Object.keys(texts));
    try {
      const { reply, kept } = await held.change((text) => this.#ask(question, text, more), true);
      if (reply.trouble) return void this.#say(reply.trouble);
      take(reply);
      drafts.done(texts, held.revision);
      this.#say(kept ? await whyNothingLasts() : "");
      // another window's ticks came in with it
      if (kept && reply[this.held.kind] !== this.held.text) await this.#draw();
      return reply;
    } catch (problem) {
      this.#say(problem.message);
      if (this.held.text !== this.held.keptText) await this.#draw();
    }
  }

  /** @param {string} sentence */
  #say(sentence) {
    this.said.textContent = sentence;
  }

  /**
   * Other numbers are followed, or another window has changed this ticket.
   * @param {boolean} anew
   */
  follow(anew) {
    return this.#inTurn(async () => ((await this.held.refresh()) || anew ? this.#draw() : null));
  }

  close() {
    this.machine.close();
  }
}

/**
 * Let a step's boxes and words be those of newer HTML; its two buttons stay, so that the finger stays on one.
 * @param {HTMLElement} place @param {string} html
 */
function renew(place, html) {
  const made = document.createElement("template");
  made.innerHTML = html; // made by Python as elements
  const newer = /** @type {HTMLElement} */ (made.content.firstElementChild);
  const inUse = /** @type {HTMLElement | null} */ (document.activeElement);
  const { box } = (place.contains(inUse) && inUse?.dataset) || {};
  place.className = newer.className;
  place.dataset.left = newer.dataset.left;
  for (const part of [".boxes", ".count"])
    place.querySelector(part).replaceChildren(...newer.querySelector(part).childNodes);
  for (const button of place.querySelectorAll("[data-tick]")) {
    const idle = newer.querySelector(`[data-tick="${button.dataset.tick}"]`).getAttribute("aria-disabled");
    idle ? button.setAttribute("aria-disabled", idle) : button.removeAttribute("aria-disabled");
  }
  if (box) place.querySelector(`[data-box="${box}"]`)?.focus({ preventScroll: true });
}

/** @type {TicketPage | null} */
let page = null;
document$.subscribe(({ body }) => {
  page?.close();
  const element = body.querySelector(".ticket");
  page = element && new TicketPage(element);
  page?.start().catch(() => {});
});
onFollow(() => page?.isOpen && page.follow(true));
onChange(({ kind, id }) => page?.isOpen && kind === page.held.kind && id === page.held.id && page.follow(false));
