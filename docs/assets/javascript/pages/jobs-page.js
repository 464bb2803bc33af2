/** The page of jobs: every job kept here, to open, duplicate, finish, save or hand over. */
import { reminder } from "../keeping/copies.js";
import { saveFile } from "../keeping/files.js";
import { askHouse } from "../keeping/following.js";
import { Held } from "../keeping/held.js";
import { putDown, ruler } from "../keeping/kept.js";
import { putBack, tellOfGone } from "../keeping/put-back.js";
import {
  keep,
  keepAll,
  last,
  newest,
  newId,
  now,
  onChange,
  remove,
  versions,
  whyNothingLasts,
} from "../keeping/store.js";
import { Question } from "../python/messages.js";
import { ask } from "../python/python.js";
import { addressOf, PLACE } from "../site.js";
import { share } from "./sharing.js";

/** @import { DocumentRecord } from "../keeping/store.js" */

const MOST_LISTED = 50; // at first
const AT_ONCE = 25; // worked out before they are shown and the next press is heard

class JobsPage {
  /** @type {Promise<unknown>} */
  #last = Promise.resolve();
  #sure = "";
  #most = MOST_LISTED;
  #none = ""; // what stands there without any job
  /** @type {Map<string, string>} */
  #lines = new Map(); // by job, state and ruler: its line in the list
  /** @type {Map<Element, string[]>} */
  #drawn = new Map(); // the lines that stand in a place
  /** @type {{atWork: DocumentRecord[], away: DocumentRecord[]}} */
  #jobs = { atWork: [], away: [] };
  #isAsked = false; // whether they are to be listed anew
  /** @type {(() => Promise<unknown>) | null} */
  #undo = null; // takes back what was done last
  #about = ""; // the job in whose row it stands what was said last
  /** @type {DocumentRecord | null} */
  #gone = null; // a job that has left its place in the list, where it now stands what was said of it

  /** @param {HTMLElement} element */
  constructor(element) {
    this.element = element;
    this.listed = element.querySelector(".listed");
    this.said = element.querySelector(".said");
    element.addEventListener("click", ({ target }) => {
      const { do: what, job } = target.closest("[data-do]")?.dataset ?? {};
      if (what) this.inTurn(() => this.#press(what, job), job);
    });
  }

  async start() {
    await this.inTurn(() => this.list());
    this.element.querySelector(".tools").hidden = false;
    this.#say(await whyNothingLasts());
    await tellOfGone("job");
  }

  /**
   * One thing after another, so that no button acts on what is still being fetched.
   * @param {() => unknown} act
   * @param {string} [job] that it is about
   */
  inTurn(act, job) {
    this.#last = this.#last.then(act).catch((problem) => this.#say(problem.message, job));
    return this.#last;
  }

  /** All jobs, those in work first, the last changed on top; of many the newest, until all are wanted. */
  async list() {
    this.#isAsked = false;
    const [there, said] = await Promise.all([newest("job"), reminder(["job"]).catch(() => "")]);
    this.element.querySelector(".reminder").textContent = said; // before the list, which it would push down
    const kept = (this.#gone ? [...there, this.#gone] : there).sort(lastFirst);
    /** @type {{atWork: DocumentRecord[], away: DocumentRecord[]}} */
    const jobs = { atWork: [], away: [] };
    for (const record of kept) (isAway(record.text) ? jobs.away : jobs.atWork).push(record);
    this.#jobs = jobs;
    await this.#fill(jobs);
  }

  /** List once more, as soon as what is being done is done; however much has changed by then. */
  listAnew() {
    if (this.#isAsked) return;
    this.#isAsked = true;
    this.inTurn(() => this.list());
  }

  /** Work out some lines and show them; then what is waiting has its turn before the next. */
  async #fill(jobs = this.#jobs) {
    if (jobs !== this.#jobs) return; // listed anew meanwhile
    const isOpen = Boolean(this.listed.querySelector("details.finished[open]"));
    const wanted = [...jobs.atWork.slice(0, this.#most), ...(isOpen ? jobs.away.slice(0, this.#most) : [])];
    const lacking = wanted.filter((record) => record !== this.#gone && !this.#lines.has(lineOf(record)));
    const now = lacking.slice(0, AT_ONCE);
    if (now.length || !this.#none) {
      const { items, none } = await ask({ ask: Question.JOBS, jobs: now, ruler: ruler(), home: PLACE });
      this.#none = none;
      now.forEach((record, at) => this.#lines.set(lineOf(record), items[at]));
    }
    this.#show(jobs, isOpen);
    if (lacking.length > now.length) this.inTurn(() => this.#fill(jobs));
  }

  /** @param {{atWork: DocumentRecord[], away: DocumentRecord[]}} jobs @param {boolean} isOpen */
  #show({ atWork, away }, isOpen) {
    const inUse = document.activeElement;
    const focused = inUse instanceof HTMLElement && this.listed.contains(inUse) && inUse.dataset;
    const [first, drawer] = this.#places();
    if (atWork.length) this.#draw(first, atWork);
    else if (this.#drawn.delete(first) || !first.childElementCount) first.innerHTML = this.#none; // made by Python
    drawer.querySelector("summary").textContent = `Finished jobs: ${this.#count(away)}`;
    if (!away.length) drawer.remove();
    else if (isOpen) this.#draw(drawer.querySelector("div"), away);
    this.#placeSaid();
    if (focused && !this.listed.contains(inUse))
      this.listed.querySelector(`[data-do="${focused.do}"][data-job="${focused.job}"]`)?.focus();
  }

  /** Where the jobs in work are listed, and the drawer of the finished ones. @returns {HTMLElement[]} */
  #places() {
    const [first, second] = this.listed.querySelectorAll(":scope > div, :scope > details");
    const place = first ?? document.createElement("div");
    const drawer = second ?? document.createElement("details");
    if (!second) {
      drawer.className = "finished";
      drawer.append(document.createElement("summary"), document.createElement("div"));
      drawer.addEventListener("toggle", () => this.inTurn(() => this.#fill()));
    }
    if (!first) this.listed.replaceChildren(place);
    if (!second) this.listed.append(drawer);
    return [place, drawer];
  }

  /**
   * The lines of a list that are worked out; where more of them follow those that stand there, only these are added.
   * @param {HTMLElement} place @param {DocumentRecord[]} records
   */
  #draw(place, records) {
    const wanted = records.slice(0, this.#most);
    const lines = wanted.flatMap((record) => this.#lines.get(lineOf(record)) ?? []);
    const before = this.#drawn.get(place) ?? [];
    const isLonger = before.length > 0 && before.every((line, at) => line === lines[at]);
    // made by Python as elements: whatever was typed is escaped in it
    if (isLonger) place.querySelector("ul").insertAdjacentHTML("beforeend", lines.slice(before.length).join(""));
    else place.innerHTML = `<ul class="job-list">${lines.join("")}</ul><p class="tools"></p>`;
    this.#drawn.set(place, lines);
    const all = `Show all ${this.#count(records)} jobs`;
    const button = Object.assign(document.createElement("button"), { type: "button", textContent: all });
    button.setAttribute("data-do", "all");
    const tools = place.querySelector("p.tools:last-child");
    tools.hidden = records.length <= this.#most;
    tools.replaceChildren(...(tools.hidden ? [] : [button]));
  }

  /** @param {DocumentRecord[]} records */
  #count(records) {
    return records.filter((each) => each !== this.#gone).length.toLocaleString("en-GB");
  }

  /** @param {string} what @param {string} [id] of the job */
  async #press(what, id = "") {
    if (what !== "remove") this.#sure = "";
    if (what === "undo") return this.#takeBack();
    const record = id && (await asTyped(id));
    if (what === "new") return this.#begin();
    if (what === "all") return this.#showAll();
    if (!record) return this.list();
    if (what === "copy") await this.#copy(record);
    else if (what === "archive" || what === "back") await this.#putAway(record, what === "archive");
    else if (what === "file") await this.#save(record);
    else if (what === "share")
      await share(this.listed.querySelector(`li[data-job="${id}"] .shared`), record.text, "job");
    else if (what === "remove") await this.#remove(record);
  }

  #showAll() {
    this.#most = Infinity;
    return this.#fill();
  }

  async #begin() {
    const id = newId();
    const { job, trouble } = await askHouse({
      ask: Question.NEW_JOB,
      id,
      at: now(),
      walk: "batch",
      typed: {},
      ruler: ruler(),
    });
    if (trouble) return this.#say(trouble);
    await keep("job", id, job, 0);
    location.assign(`${addressOf("batch/")}#job=${id}`);
  }

  /** @param {DocumentRecord} record */
  async #copy(record) {
    const id = newId();
    const { job, trouble } = await ask({ ask: Question.COPY_JOB, job: record.text, id });
    if (trouble) return this.#say(trouble, record.id);
    await keep("job", id, job, 0);
    this.#say("Duplicated. Nothing is ticked or measured in the new one yet.", record.id);
  }

  /** @param {DocumentRecord} record @param {boolean} away @param {DocumentRecord} [gone] where it was pressed */
  async #putAway(record, away, gone = this.#goneFrom(record)) {
    const { reply } = await new Held("job", record).change((job) =>
      ask({ ask: Question.JOB_CHANGE, job, changes: { archived: away ? "yes" : "" } }),
    );
    const trouble = reply.refusal ?? reply.trouble;
    if (trouble) return this.#say(trouble, record.id);
    if (away) putDown(record.id);
    await this.#sayInPlaceOf(
      gone,
      away
        ? "It now stands among the finished jobs, at the foot of the list. Nothing is deleted."
        : "It stands among the jobs in work again.",
      async () => {
        const now = await last("job", record.id);
        if (now) await this.#putAway(now, !away, gone);
      },
    );
  }

  /** @param {DocumentRecord} record */
  async #save(record) {
    const { file } = await askHouse({ ask: Question.JOB_OPENED, job: record.text });
    saveFile(file ?? "job.json", record.text);
  }

  /** @param {DocumentRecord} record */
  async #remove(record) {
    const { id } = record;
    if (this.#sure !== id) {
      this.#sure = id;
      return this.#say(
        "This deletes the job from this browser, with all that was ticked and measured. Press again if you are sure.",
        id,
      );
    }
    this.#sure = "";
    const name = this.listed.querySelector(`li[data-job="${id}"] h2`).textContent;
    const gone = this.#goneFrom(record);
    const states = (await versions("job", id)).map(({ text, at }) => ({ text, at }));
    await remove("job", id);
    putDown(id);
    await this.#sayInPlaceOf(gone, `“${name}” is deleted. Until you leave this page it can come back.`, async () => {
      await keepAll("job", id, states, 0);
      this.#gone = null;
      await this.list();
      this.#say(`“${name}” is back, with every change.`, id);
    });
  }

  /** The place of a job that is about to leave it: an empty row of its own. @param {DocumentRecord} record */
  #goneFrom(record) {
    const gone = { ...record, revision: 0 };
    const row = this.#row(record.id)?.cloneNode();
    if (row instanceof HTMLElement) {
      row.className = "gone";
      this.#lines.set(lineOf(gone), row.outerHTML);
    }
    return gone;
  }

  /** @param {string} id @returns {HTMLElement | null} */
  #row(id) {
    const row = `li[data-job="${id}"]`;
    return this.listed.querySelector(`${row}.gone`) ?? this.listed.querySelector(row);
  }

  async #takeBack() {
    const undo = this.#undo;
    this.#undo = null;
    await undo?.();
  }

  /**
   * Say what became of a job that is no longer where it was pressed; the key that pressed it then takes it back.
   * @param {DocumentRecord} gone @param {string} sentence @param {() => Promise<unknown>} undo
   */
  async #sayInPlaceOf(gone, sentence, undo) {
    const hadFocus = this.listed.contains(document.activeElement);
    this.#gone = gone;
    await this.list();
    this.#say(sentence, gone.id, undo);
    if (hadFocus) this.said.querySelector("button")?.focus({ preventScroll: true });
  }

  /**
   * @param {string} sentence
   * @param {string} [job] in whose row it stands, where she pressed
   * @param {(() => Promise<unknown>) | null} [undo] what a button beside the sentence does
   */
  #say(sentence, job = "", undo = null) {
    if (this.#gone && this.#gone.id !== job) {
      this.#gone = null;
      this.listAnew();
    }
    [this.#about, this.#undo] = [job, undo];
    this.#placeSaid();
    this.said.textContent = sentence;
    if (undo)
      this.said.append(" ", Object.assign(document.createElement("button"), { type: "button", textContent: "Undo" }));
    this.said.querySelector("button")?.setAttribute("data-do", "undo");
    if (job) this.said.scrollIntoView({ block: "nearest" });
  }

  #placeSaid() {
    const row = this.#row(this.#about);
    if (!row) this.element.querySelector(".reminder").before(this.said);
    else if (this.said.parentElement !== row) row.insertBefore(this.said, row.querySelector(".shared"));
  }
}

/** @param {DocumentRecord} one @param {DocumentRecord} other */
const lastFirst = (one, other) =>
  Number(one.at < other.at) - Number(one.at > other.at) || Number(one.id > other.id) - Number(one.id < other.id);

/** @param {DocumentRecord} record */
const lineOf = ({ id, revision }) => `${id} ${revision} ${ruler()}`;

/**
 * Whether a job stands among the finished ones; Python says what else is in it.
 * @param {string} text
 */
function isAway(text) {
  try {
    return JSON.parse(text).archived === true;
  } catch {
    return false; // listed in work, as one that cannot be read
  }
}

/**
 * A job as it is kept, with what was typed into it last.
 * @param {string} id
 */
async function asTyped(id) {
  const record = await last("job", id);
  if (!record) return undefined;
  const held = new Held("job", record);
  await putBack(held);
  return { ...record, text: held.text, revision: held.revision };
}

/** @type {JobsPage | null} */
let page = null;
document$.subscribe(({ body }) => {
  const element = body.querySelector(".jobs-page");
  page = element && new JobsPage(element);
  page?.start().catch(() => {});
});
onChange(({ kind }) => kind === "job" && page?.listAnew());
