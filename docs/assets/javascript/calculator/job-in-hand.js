/** The job that this window works on: what is typed into a walk goes into its record, every change at once. */
import { Drafts } from "../keeping/drafts.js";
import { saidAt } from "../keeping/files.js";
import { askHouse, methodText, onFollow, ready } from "../keeping/following.js";
import { Held } from "../keeping/held.js";
import { measures } from "../keeping/in-hand.js";
import { jobInHand, keepTyped, ruler, takeInHand, typedIn } from "../keeping/kept.js";
import { putBack } from "../keeping/put-back.js";
import { keep, last, newId, now, onChange, remove, versions, whyNothingLasts } from "../keeping/store.js";
import { Question } from "../python/messages.js";
import { ask } from "../python/python.js";
import { JobBlanks } from "./job-blanks.js";
import { followJobLinks, takeBegin, takeFromAddress } from "./job-links.js";

/**
 * @import { Texts } from "../keeping/kept.js"
 * @import { Change } from "../keeping/store.js"
 * @import { Reply } from "../python/messages.js"
 * @import { Keeper, Section } from "./section.js"
 */

const PAUSE = 700; // [ms] without a keystroke before a change is kept
const GONE = "This job is not kept in this browser. It may have been deleted; look through the jobs kept here.";

export class JobInHand {
  /** @type {Held | null} */
  #held = null;
  #drafts = new Drafts("job", "");
  #method = "";
  #cloth = ""; // as the job, or the ticket of a batch that is none, names it
  /** @type {Record<string, Texts>} */
  #known = {}; // what the record has, as the walk shows it: calculator → field → text
  /** @type {Texts} */
  #waiting = {}; // changes not yet kept: path → text
  /** @type {(() => void)[]} */
  #early = []; // what was typed before the job was there
  #underWay = 0; // changes that are being kept
  #readOn = ruler();
  #timer = 0;

  /** @param {HTMLElement} element the walk */
  constructor(element) {
    this.element = element;
    /** @type {Section[]} */
    this.sections = [];
    /** @type {() => void} */
    this.answer = () => {};
    this.line = element.querySelector(".job-in-hand");
    this.said = this.line.querySelector(".said");
    /** @type {HTMLDetailsElement} */
    this.changes = this.line.querySelector(".job-changes");
    this.blanks = new JobBlanks(element);
    takeFromAddress();
    this.id = jobInHand();
    this.line.addEventListener("click", ({ target }) =>
      this.#press(target.closest("[data-do], [data-back-to]")?.dataset ?? {}),
    );
    this.changes.addEventListener("toggle", () => this.#listChanges());
    for (const blank of this.blanks.all) {
      blank.addEventListener("input", () => this.#note(blank.name, blank.value));
      blank.addEventListener("change", () => this.#commit());
    }
    element.addEventListener("change", () => this.#commit());
  }

  /**
   * Where the sections of the walk find and leave what is typed: in the job, or in this browser's loose numbers.
   * @returns {Keeper}
   */
  get keeper() {
    const hasNone = () => !this.id;
    return {
      get knowsInHand() {
        return hasNone();
      },
      read: (name) => (this.id ? { texts: {}, readOn: ruler(), refused: {} } : typedIn(name)),
      keep: (name, texts, readOn, calculator, latest, refused) => {
        const typed = () => this.#typed(calculator, texts, latest);
        if (!this.id) keepTyped(name, texts, readOn, refused);
        else if (this.#held) typed();
        else this.#early.push(typed);
      },
    };
  }

  /** What a question of the walk carries beside the numbers: the measures the job was made with, and its cloth. */
  get question() {
    return this.#held ? { method: this.#method, cloth: this.#cloth } : { cloth: this.#cloth, measures: measures() };
  }

  /** @param {Section[]} sections @param {() => void} answer asks for the answers anew */
  begin(sections, answer) {
    [this.sections, this.answer] = [sections, answer];
    this.#dress();
    const isToBegin = takeBegin();
    if (this.id) this.#open().catch((problem) => this.#letGo(problem.message));
    else if (isToBegin) this.#press({ do: "keep" });
    else this.#lookAtTicket().catch(() => {});
  }

  /** The cloth that the ticket of a batch kept as no job names. */
  async #lookAtTicket() {
    const loose = await last("loose", this.#walk);
    const cloth = loose ? (JSON.parse(loose.text).cloth ?? "") : "";
    if (this.id || cloth === this.#cloth) return;
    this.#cloth = cloth;
    this.answer();
  }

  get #walk() {
    return /** @type {string} */ (this.element.dataset.walk);
  }

  get isOpen() {
    return this.#held !== null;
  }

  /** Keep at once what was typed last, as when the page is being left. */
  keepNow() {
    if (this.#held) this.#commit();
  }

  /** The address names a job, as a link to one does when this page is already there. */
  async arrive() {
    if (!takeFromAddress() || jobInHand() === this.id) return;
    await this.#commit();
    this.id = jobInHand();
    this.#dress();
    await this.#open().catch((problem) => this.#letGo(problem.message));
  }

  /**
   * Another window, or the ticket, has changed a job.
   * @param {Change} change
   */
  async hear({ kind, id }) {
    if (kind === "loose" && !this.id) return this.#lookAtTicket();
    if (kind !== "job" || id !== this.#held?.id) return;
    await this.#commit(); // first, so that what both have changed is noticed
    if (await this.#held?.refresh()) await this.#show();
  }

  /** The other pages show other numbers from now on. */
  async followed() {
    if (this.#held) await this.#show();
  }

  async #open() {
    this.element.inert = true; // until its numbers stand there, so that none is typed into another job's
    await ready; // what the other pages show is known only then
    const record = await last("job", this.id);
    if (!record) return this.#letGo(GONE);
    this.#held = new Held("job", record);
    this.#drafts = new Drafts("job", record.id);
    const { said } = await putBack(this.#held);
    for (const typed of this.#early.splice(0)) typed();
    await this.#show();
    if (this.#held) this.#say(said || (await whyNothingLasts()));
  }

  async #show() {
    const opened = await this.#opened();
    if (!opened) return; // it has been put down meanwhile
    const { typed, method, isApart, texts, about, trouble } = opened;
    if (trouble) return this.#letGo(trouble);
    [this.#method, this.#known, this.#cloth] = [method, typed, texts.cloth];
    this.#hideWhose(isApart);
    // made by Python as elements: whatever was typed is escaped in it
    this.line.querySelector(".about-job").innerHTML = about;
    this.blanks.show(this.id, this.sections, typed, texts, this.#waiting);
    this.#dress();
    this.element.inert = false;
    await this.#listChanges();
    this.answer();
  }

  /**
   * The job as it stands once everything typed so far is in it, so that nothing is overwritten on the page that came in
   * meanwhile.
   */
  async #opened() {
    for (;;) {
      await this.#commit();
      await this.#held?.rest();
      if (!this.#held) return null;
      const { text } = this.#held;
      const reply = await askHouse({ ask: Question.JOB_OPENED, job: text });
      if (text === this.#held?.text && !this.#underWay && !Object.keys(this.#waiting).length) return reply;
    }
  }

  /** @param {string} sentence */
  #letGo(sentence) {
    [this.#held, this.id, this.#waiting, this.#cloth, this.#early] = [null, "", {}, "", []];
    takeInHand("");
    this.#hideWhose(false);
    for (const section of this.sections) {
      const { texts, readOn, refused } = typedIn(section.name);
      section.hold(texts, readOn, refused);
    }
    this.#dress();
    this.element.inert = false;
    this.answer();
    this.#lookAtTicket().catch(() => {});
    this.#say(sentence);
  }

  /**
   * The line that says whose numbers a page shows is not true of a job with measures of its own.
   * @param {boolean} hidden
   */
  #hideWhose(hidden) {
    const line = document.querySelector(".whose-method");
    if (line) line.hidden = hidden;
  }

  #dress() {
    for (const each of this.element.querySelectorAll(".with-job")) each.hidden = !this.id;
    for (const each of this.element.querySelectorAll(".without-job")) each.hidden = Boolean(this.id);
    /** @type {HTMLAnchorElement} */
    const ticket = this.line.querySelector(".to-ticket");
    ticket.hash = this.id ? `job=${this.id}` : "";
  }

  /** @param {DOMStringMap} pressed */
  async #press({ do: what, backTo }) {
    try {
      if (what === "keep") await this.#beginOne();
      else if (what === "stop") await this.#stop();
      else if (what === "method") await this.#keep({ method: methodText() });
      else if (backTo) await this.#backTo(Number(backTo));
    } catch (problem) {
      this.#say(problem.message);
    }
  }

  async #beginOne() {
    const id = newId();
    const typed = Object.fromEntries(this.sections.map((section) => [section.calculator, section.typed]));
    const loose = await last("loose", this.#walk); // what its ticket has ticked so far
    const { job, trouble } = await askHouse({
      ask: Question.NEW_JOB,
      id,
      at: now(),
      walk: this.#walk,
      typed,
      measures: measures(),
      loose: loose?.text ?? "",
      ruler: this.sections[0].readOn,
    });
    if (trouble) return this.#say(trouble);
    await keep("job", id, job, 0);
    if (loose) await remove("loose", loose.id);
    this.id = id;
    takeInHand(id);
    await this.#open();
    /** @type {HTMLInputElement} */
    const name = this.line.querySelector("[name=name]");
    name.focus();
    name.select();
  }

  async #stop() {
    await this.#commit();
    this.#letGo("The job is kept. The numbers below are no longer its own.");
  }

  /** @param {number} revision */
  async #backTo(revision) {
    const then = (await versions("job", this.id)).find((each) => each.revision === revision);
    await this.#held?.change(async () => ({ job: then?.text }));
    await this.#show();
  }

  /** @param {string} calculator @param {Texts} texts @param {string} readOn */
  #typed(calculator, texts, readOn) {
    const before = this.#known[calculator] ?? {};
    this.#known[calculator] = { ...texts };
    for (const name of new Set([...Object.keys(before), ...Object.keys(texts)])) {
      if (before[name] !== texts[name]) this.#note(`typed.${calculator}.${name}`, texts[name] ?? "", readOn);
    }
  }

  /** @param {string} path @param {string} text @param {string} [readOn] */
  #note(path, text, readOn = this.#readOn) {
    this.#drafts.note(path, text, this.#held?.revision ?? 0, readOn);
    if (readOn !== this.#readOn) this.#commit(); // what waits was meant on another ruler
    this.#waiting[path] = text;
    this.#readOn = readOn;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#commit(), PAUSE);
  }

  async #commit() {
    clearTimeout(this.#timer);
    const changes = this.#waiting;
    this.#waiting = {};
    if (Object.keys(changes).length)
      await this.#keep(changes, this.#readOn, true).catch((problem) => this.#say(problem.message));
  }

  /**
   * Change and keep, and say how it went. What one refused entry stands beside is kept without it.
   * @param {Texts} changes path → text
   * @param {boolean} [hasDraft] whether they were put down as drafts before
   */
  async #keep(changes, readOn = ruler(), hasDraft = false) {
    const held = this.#held;
    const drafts = this.#drafts;
    if (!held) return;
    const paths = Object.keys(changes);
    const isOne = paths.length === 1;
    drafts.send(paths);
    this.#underWay++;
    const change = held.change((job) => ask({ ask: Question.JOB_CHANGE, job, changes, ruler: readOn }), hasDraft);
    const { reply, kept, said } = await change.finally(() => this.#underWay--);
    if (!reply.refusal || isOne) {
      for (const path of paths) this.blanks.note(held.id, path, changes[path], reply.refusal);
      if (!reply.trouble) drafts.done(changes, held.revision);
    }
    if (reply.refusal && !isOne)
      for (const path of paths) await this.#keep({ [path]: changes[path] }, readOn, hasDraft);
    else if (reply.refusal ?? reply.trouble) this.#say(reply.refusal ?? reply.trouble);
    else if (kept) this.#say(said || (await whyNothingLasts()) || saidAt());
    if ("method" in changes || "cloth" in changes || (kept && reply.job !== held.text))
      await this.#show(); // another window's changes came in with it
    else if (kept) await this.#listChanges();
  }

  async #listChanges() {
    if (!this.#held || !this.changes.open) return;
    const { body } = await ask({ ask: Question.JOB_CHANGES, versions: await versions("job", this.id) });
    this.changes.querySelector(".listed").innerHTML = body;
  }

  /** @param {string} sentence */
  #say(sentence) {
    this.said.textContent = sentence;
  }
}

/** @type {JobInHand[]} */
let here = []; // the jobs of the walks in the page in view

/**
 * The job of a walk of the page in view.
 * @param {HTMLElement} element
 */
export function jobOf(element) {
  const job = new JobInHand(element);
  here = [...here.filter((each) => each.element.isConnected), job];
  return job;
}

followJobLinks(() => here.forEach((job) => job.element.isConnected && job.arrive()));
document.addEventListener(
  "visibilitychange",
  () => document.visibilityState === "hidden" && here.forEach((job) => job.keepNow()),
);
onChange((change) => here.forEach((job) => job.hear(change)));
onFollow(() => here.forEach((job) => job.element.isConnected && job.followed()));
