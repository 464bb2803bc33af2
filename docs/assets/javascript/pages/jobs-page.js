/** The page of jobs: every job kept here, to open, duplicate, finish, save or hand over. */
import { saveFile } from "../keeping/files.js";
import { askHouse } from "../keeping/following.js";
import { Held } from "../keeping/held.js";
import { jobInHand, ruler, takeInHand } from "../keeping/kept.js";
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
import { PLACE } from "../site.js";
import { share } from "./sharing.js";

/** @import { DocumentRecord } from "../keeping/store.js" */

class JobsPage {
  /** @type {Promise<unknown>} */
  #last = Promise.resolve();
  #sure = "";
  /** @type {(() => Promise<unknown>) | null} */
  #undo = null; // takes back what was done last

  /** @param {HTMLElement} element */
  constructor(element) {
    this.element = element;
    this.listed = element.querySelector(".listed");
    this.said = element.querySelector(".said");
    element.addEventListener("click", ({ target }) => {
      const { do: what, job } = target.closest("[data-do]")?.dataset ?? {};
      if (what) this.inTurn(() => this.#press(what, job));
    });
  }

  async start() {
    await this.inTurn(() => this.list());
    this.element.querySelector(".tools").hidden = false;
    this.#say(await whyNothingLasts());
  }

  /**
   * One thing after another, so that no button acts on what is still being fetched.
   * @param {() => unknown} act
   */
  inTurn(act) {
    this.#last = this.#last.then(act).catch((problem) => this.#say(problem.message));
    return this.#last;
  }

  async list() {
    const jobs = await newest("job");
    const { body } = await ask({ ask: Question.JOBS, jobs, ruler: ruler(), home: PLACE });
    const open = this.listed.querySelector("details")?.open;
    const inUse = document.activeElement;
    const focused = inUse instanceof HTMLElement && this.listed.contains(inUse) && inUse.dataset;
    this.listed.innerHTML = body; // made by Python as elements: whatever was typed is escaped in it
    if (open) this.listed.querySelector("details")?.setAttribute("open", "");
    if (focused) this.listed.querySelector(`[data-do="${focused.do}"][data-job="${focused.job}"]`)?.focus();
  }

  /** @param {string} what @param {string} [id] of the job */
  async #press(what, id = "") {
    if (what !== "remove") this.#sure = "";
    if (what === "undo") return this.#takeBack();
    const record = id && (await last("job", id));
    if (what === "new") return this.#begin();
    if (!record) return this.list();
    if (what === "copy") await this.#copy(record);
    else if (what === "archive" || what === "back") await this.#putAway(record, what === "archive");
    else if (what === "file") await this.#save(record);
    else if (what === "share")
      await share(this.listed.querySelector(`li[data-job="${id}"] .shared`), record.text, "job");
    else if (what === "remove") await this.#remove(record);
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
    location.assign(`${PLACE}batch/#job=${id}`);
  }

  /** @param {DocumentRecord} record */
  async #copy(record) {
    const id = newId();
    const { job, trouble } = await ask({ ask: Question.COPY_JOB, job: record.text, id });
    if (trouble) return this.#say(trouble);
    await keep("job", id, job, 0);
    this.#say("Duplicated. Nothing is ticked or measured in the new one yet.");
  }

  /** @param {{id: string, text: string, revision: number}} record @param {boolean} away */
  async #putAway(record, away) {
    const { reply } = await new Held("job", record).change((job) =>
      ask({ ask: Question.JOB_CHANGE, job, changes: { archived: away ? "yes" : "" } }),
    );
    const trouble = reply.refusal ?? reply.trouble;
    if (trouble) return this.#say(trouble);
    this.#say(
      away
        ? "It now stands among the finished jobs, at the foot of the list. Nothing is deleted."
        : "It stands among the jobs in work again.",
      async () => {
        const now = await last("job", record.id);
        if (now) await this.#putAway(now, !away);
      },
    );
  }

  /** @param {DocumentRecord} record */
  async #save(record) {
    const { file } = await askHouse({ ask: Question.JOB_OPENED, job: record.text });
    saveFile(file ?? "job.json", record.text);
  }

  /** @param {DocumentRecord} record */
  async #remove({ id }) {
    if (this.#sure !== id) {
      this.#sure = id;
      return this.#say(
        "This deletes the job from this browser, with all that was ticked and measured. Press again if you are sure.",
      );
    }
    this.#sure = "";
    const name = this.listed.querySelector(`li[data-job="${id}"] h2`).textContent;
    const states = (await versions("job", id)).map(({ text, at }) => ({ text, at }));
    await remove("job", id);
    if (jobInHand() === id) takeInHand("");
    this.#say(`“${name}” is deleted. Until you leave this page it can come back.`, async () => {
      await keepAll("job", id, states, 0);
      this.#say(`“${name}” is back, with every change.`);
    });
  }

  async #takeBack() {
    const undo = this.#undo;
    this.#undo = null;
    await undo?.();
  }

  /**
   * @param {string} sentence
   * @param {(() => Promise<unknown>) | null} [undo] what a button beside the sentence does
   */
  #say(sentence, undo = null) {
    this.#undo = undo;
    this.said.textContent = sentence;
    if (undo)
      this.said.append(" ", Object.assign(document.createElement("button"), { type: "button", textContent: "Undo" }));
    this.said.querySelector("button")?.setAttribute("data-do", "undo");
  }
}

/** @type {JobsPage | null} */
let page = null;
document$.subscribe(({ body }) => {
  const element = body.querySelector(".jobs-page");
  page = element && new JobsPage(element);
  page?.start().catch(() => {});
});
onChange(({ kind }) => kind === "job" && page?.inTurn(() => page?.list()));
