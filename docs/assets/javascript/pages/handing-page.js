/**
 * Opening what somebody handed over, and saving everything: nothing is kept before the reader has seen it and chosen.
 */
import { saveFile } from "../keeping/files.js";
import { follow, followedId } from "../keeping/following.js";
import { keepRuler, ruler } from "../keeping/kept.js";
import { isSafe, keepAll, last, newest, newId, Overtaken, versions, whyNothingLasts } from "../keeping/store.js";
import { Question } from "../python/messages.js";
import { ask } from "../python/python.js";

const LONGEST = 20_000_000; // [bytes] of a file; Python refuses a larger one by its size alone
const KINDS = ["method", "job", "loose"]; // loose: ticked and measured for the batch that is kept as no job
const MARK = "#handed=";
const CHOSEN = "Chosen. Every page shows it so from now on.";

/**
 * @typedef {{text: string, size: number} | {fragment: string}} Given what was opened
 * @typedef {{kind: string, id: string, known: boolean}} Item one thing of what was opened
 * @typedef {"follow" | "beside" | "replace"} How what becomes of one that is here already
 */

class HandingPage {
  /** @type {Given | null} */
  #given = null;
  /** @type {{items: Item[], follows?: string, ruler?: string}} */
  #opened = { items: [] };
  /** @type {Map<string, number>} */
  #revisions = new Map(); // "kind id" → the revision that was here when it was shown

  /** @param {HTMLElement} element */
  constructor(element) {
    this.said = element.querySelector(".said");
    this.opened = element.querySelector(".opened");
    element.querySelector(".tools").hidden = false;
    element
      .querySelector("[data-do=everything]")
      .addEventListener("click", () => this.#careful(() => this.#saveEverything()));
    element.querySelector("[name=file]").addEventListener("change", ({ target }) => {
      const [file] = (target instanceof HTMLInputElement && target.files) || [];
      if (file) this.#careful(() => this.#openFile(file));
    });
    this.opened.addEventListener("click", ({ target }) => {
      const { keep: how, item } = target.closest("[data-keep]")?.dataset ?? {};
      if (how === "all") this.#careful(() => this.#keepNew());
      else if (how === "choices") this.#careful(() => this.#choose());
      else if (how) this.#careful(() => this.#keep(/** @type {How} */ (how), Number(item)));
    });
  }

  async start() {
    const fragment = inAddress();
    const lasting = (await isSafe())
      ? "This browser has promised not to clear away what is kept here."
      : "This browser has not promised to keep what is here when it needs room: save a file now and then.";
    this.#say((await whyNothingLasts()) || lasting);
    if (fragment) await this.open(fragment);
  }

  /** @param {string} fragment */
  open(fragment) {
    return this.#careful(async () => {
      await this.#show({ fragment });
      // opened once, not again at every reload
      if (inAddress() === fragment) history.replaceState(history.state, "", location.pathname);
    });
  }

  /** @param {() => Promise<unknown>} act */
  async #careful(act) {
    try {
      await act();
    } catch (problem) {
      this.#say(
        problem instanceof Overtaken
          ? "This was changed in another window meanwhile. Open it again to see where it differs now."
          : problem.message,
      );
    }
  }

  /** @param {File} file */
  async #openFile(file) {
    await this.#show({ text: file.size > LONGEST ? "" : await file.text(), size: file.size });
  }

  /** @param {Given} given */
  async #show(given) {
    this.opened.replaceChildren();
    const here = (await Promise.all(KINDS.map(newest))).flat();
    const kept = Object.fromEntries(here.map(({ kind, id, text }) => [`${kind} ${id}`, text]));
    this.#revisions = new Map(here.map(({ kind, id, revision }) => [`${kind} ${id}`, revision]));
    const { body, trouble, ...opened } = await ask({ ask: Question.HANDED, kept, ...given });
    if (trouble) return this.#say(trouble);
    this.#given = given;
    this.#opened = { items: [], ...opened };
    this.opened.innerHTML = body; // made by Python as elements: whatever was typed is escaped in it
    this.#say("Nothing is kept yet. Look at it, then choose.");
  }

  /** @param {How} how @param {number} number */
  async #keep(how, number) {
    const { kind, id } = await this.#take(how === "follow" ? "beside" : how, number);
    if (how === "follow") {
      await follow(id);
      this.#say("Kept, and every page shows its numbers from now on. You find it under House.");
      return this.said.scrollIntoView({ block: "nearest" });
    }
    this.#say(
      `Kept. You find it under House, ${kind === "loose" ? "on the work ticket" : "with your methods and your jobs"}.`,
    );
    if (kind === "method" && id !== followedId()) this.#offerToFollow(id);
    this.said.scrollIntoView({ block: "nearest" });
  }

  /** @param {string} id */
  #offerToFollow(id) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = "Let every page show its numbers";
    button.addEventListener("click", () =>
      this.#careful(async () => {
        await follow(id);
        this.#say(CHOSEN);
      }),
    );
    this.said.append(" The pages do not show its numbers yet. ", button);
  }

  async #keepNew() {
    const places = this.#opened.items.flatMap(({ known }, number) => (known ? [] : [number]));
    for (const number of places) if (this.#buttons(number).length) await this.#take("beside", number);
    this.opened.querySelector("[data-keep=all]").remove();
    this.#say("All that was new here is kept.");
  }

  /** @param {How} how @param {number} number */
  async #take(how, number) {
    const { kind, id: own, known } = this.#opened.items[number];
    const id = how === "beside" && (known || !own) ? newId() : own;
    const mine = how === "replace" ? (await last(kind, id))?.text : "";
    const { versions: states, trouble } = await ask({
      ask: Question.ONE_HANDED,
      ...this.#given,
      item: number,
      id,
      mine,
    });
    if (trouble) throw new Error(trouble);
    await keepAll(kind, id, states, how === "replace" ? (this.#revisions.get(`${kind} ${id}`) ?? 0) : 0);
    for (const each of this.#buttons(number)) each.remove();
    return { kind, id };
  }

  /** @param {number} number */
  #buttons(number) {
    return [...this.opened.querySelectorAll(`[data-item="${number}"]`)];
  }

  async #choose() {
    const { follows, ruler: wanted } = this.#opened;
    if (follows && !(await last("method", follows))) return this.#say("Keep the method first, then choose it.");
    if (follows) await follow(follows);
    if (wanted) keepRuler(wanted);
    this.#say(CHOSEN);
  }

  /** One after another, so that Python is never asked for too much at once. */
  async #saveEverything() {
    const said = new Set();
    const parts = [];
    for (const { kind, id } of (await Promise.all(KINDS.map(newest))).flat()) {
      const part = await ask({ ask: Question.SAVE_ONE, kind, id, versions: await versions(kind, id) });
      parts.push(part.saved);
      said.add(part.said);
    }
    const { text } = await ask({ ask: Question.EVERYTHING, saved: parts, follows: followedId(), ruler: ruler() });
    saveFile("workroom.json", text);
    this.#say([...said].join(" ").trim() || "Saved.");
  }

  /** @param {string} sentence */
  #say(sentence) {
    this.said.textContent = sentence;
  }
}

/** What a link brought in this address. */
const inAddress = () => (location.hash.startsWith(MARK) ? location.hash.slice(MARK.length) : "");

/** @type {HandingPage | null} */
let page = null;
document$.subscribe(({ body }) => {
  const element = body.querySelector(".kept");
  page = element && new HandingPage(element);
  page?.start().catch(() => {});
});
addEventListener("hashchange", () => {
  const fragment = inAddress();
  if (fragment) page?.open(fragment);
});
