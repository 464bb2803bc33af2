/**
 * Opening what somebody handed over, and saving everything: nothing is kept before the reader has seen it and chosen.
 */
import { rememberCopy, reminder } from "../keeping/copies.js";
import { CopyFile } from "../keeping/copy-file.js";
import { EVERYTHING, inWords, putDown } from "../keeping/everything.js";
import { saveFile } from "../keeping/files.js";
import { follow, followedId } from "../keeping/following.js";
import { keepRuler, ruler } from "../keeping/kept.js";
import { saveCopy } from "../keeping/save-copy.js";
import { choice, choose, isSafe, keepAll, last, newId, Overtaken, whyNothingLasts } from "../keeping/store.js";
import { Question } from "../python/messages.js";
import { ask } from "../python/python.js";
import { chooseLook, look } from "./light-or-dark.js";

const MARK = "#handed=";
const CHOSEN = "Chosen. Every page shows it so from now on.";
/** @type {Record<string, string>} */
const FOUND = {
  loose: "You find it under House, on the work ticket.",
  typed: "It stands in its blanks.",
  refused: "It stands in its blank again, to be mended.",
};
const MOST_WHOLE = 10; // things that are shown whole; of more, each is opened by a press
const MOST_LISTED = 50; // of them at first

/**
 * @typedef {{kind: string, id: string, name: string, known: boolean, same: boolean, body: string,
 *   kept?: boolean}} Item one thing of what was opened, and whether it was kept since
 * @typedef {"follow" | "beside" | "replace"} How what becomes of one that is here already
 * @typedef {{text: string, revision: number}} Mine what stands here
 * @typedef {{file: CopyFile, version: number, choices: Record<string, string>}} Opened
 */

class HandingPage {
  /** @type {Opened | null} */
  #file = null;
  /** @type {Item[]} */
  #items = [];
  /** @type {Map<string, Mine>} */
  #mine = new Map(); // "kind id" → what was here when it was shown
  /** @type {AbortController | null} */
  #work = null;

  /** @param {HTMLElement} element */
  constructor(element) {
    this.said = element.querySelector(".said");
    this.opened = element.querySelector(".opened");
    this.reminder = element.querySelector(".reminder");
    this.progress = element.querySelector(".going-on");
    element.querySelector(".tools").hidden = false;
    element
      .querySelector("[data-do=everything]")
      .addEventListener("click", () => this.#long((signal) => this.#saveEverything(signal)));
    element.querySelector("[data-do=stop]").addEventListener("click", () => this.#work?.abort());
    element.querySelector("[name=file]").addEventListener("change", ({ target }) => {
      const [file] = (target instanceof HTMLInputElement && target.files) || [];
      if (file) this.#long((signal) => this.#show(file, signal));
    });
    this.opened.addEventListener("click", ({ target }) => {
      const { keep: how, item } = target.closest("[data-keep]")?.dataset ?? {};
      if (how === "all") this.#long((signal) => this.#keepNew(signal));
      else if (how === "choices") this.#careful(() => this.#choose());
      else if (how) this.#careful(() => this.#keep(/** @type {How} */ (how), Number(item)));
    });
    // a drawer tells only itself that it is opened
    this.opened.addEventListener("toggle", ({ target }) => this.#careful(() => this.#unfold(target)), true);
  }

  async start() {
    const fragment = inAddress();
    const lasting = (await isSafe())
      ? "This browser has promised not to clear away what is kept here."
      : "This browser has not promised to keep what is here when it needs room: save a file now and then.";
    const words = (await whyNothingLasts()) || lasting;
    this.reminder.textContent = await reminder().catch(() => "");
    this.#say(words);
    if (fragment) await this.open(fragment);
  }

  /** @param {string} fragment */
  open(fragment) {
    return this.#long(async (signal) => {
      const { text, trouble } = await ask({ ask: Question.UNPACK, fragment }, { signal });
      if (trouble) throw new Error(trouble);
      await this.#show(new Blob([text]), signal);
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

  /**
   * Work that says how far it is and can be stopped; one at a time.
   * @param {(signal: AbortSignal) => Promise<unknown>} act
   */
  async #long(act) {
    this.#work?.abort();
    const work = new AbortController();
    this.#work = work;
    await this.#careful(async () => {
      try {
        await act(work.signal);
      } catch (problem) {
        if (!work.signal.aborted) throw problem;
        if (this.#work === work) this.#say("Stopped. What was kept before that is kept.");
      }
    });
    if (this.#work !== work) return;
    this.#work = null;
    this.progress.hidden = true;
  }

  /** @param {number} done @param {number} total @param {string} doing such as "read" */
  #tell(done, total, doing) {
    if (total < MOST_WHOLE) return;
    this.progress.hidden = false;
    this.progress.querySelector(".far").textContent =
      `${done.toLocaleString("en-GB")} of ${total.toLocaleString("en-GB")} ${doing}.`;
  }

  /** @param {Blob} blob @param {AbortSignal} signal */
  async #show(blob, signal) {
    this.opened.replaceChildren();
    [this.#file, this.#items] = [null, []];
    let file = await CopyFile.split(blob);
    const { version, choices, alone, trouble } = await ask({ ask: Question.HANDED, head: file.head }, { signal });
    if (trouble) return this.#say(trouble);
    if (alone) file = await CopyFile.split(new Blob(['{"kept":[', alone, "]}"]));
    this.#file = { file, version, choices };
    const kinds = Object.entries(EVERYTHING);
    const here = await Promise.all(kinds.map(async ([kind, { newest }]) => ({ kind, things: await newest() })));
    this.#mine = new Map(here.flatMap(({ kind, things }) => [...things].map(([id, mine]) => [`${kind} ${id}`, mine])));
    this.#say("");
    await this.#read(this.#file, signal);
    await this.#list(signal);
    if (this.#items.length) this.#say("Nothing is kept yet. Look at it, then choose.");
    else this.#say("Nothing was kept where this file was saved.");
  }

  /** @param {Opened} opened @param {AbortSignal} signal */
  async #read({ file, version }, signal) {
    const all = [...file.ranges.keys()];
    /** @type {Item[]} */
    const items = [];
    for (const group of file.groups(all)) {
      const entries = (await file.texts(group)).map((text) => ({
        text,
        mine: this.#mineOf(text, version)?.text ?? "",
      }));
      const folded = all.length > MOST_WHOLE;
      const question = { ask: Question.HANDED_SOME, version, entries, first: group[0], folded };
      const reply = await ask(question, { signal });
      items.push(...reply.items);
      this.#tell(items.length, all.length, "read");
    }
    this.#items = items;
  }

  /** @param {string} entry @param {number} version of its file */
  #mineOf(entry, version) {
    try {
      const { kind = version === 1 ? "method" : "", id } = JSON.parse(entry);
      return this.#mine.get(`${kind} ${id}`);
    } catch {
      return undefined; // Python will say so
    }
  }

  /** @param {AbortSignal} signal */
  async #list(signal) {
    const { choices } = /** @type {Opened} */ (this.#file);
    const followed = this.#items.find(({ kind, id }) => kind === "method" && id === choices.follows);
    const { before, after } = await ask(
      { ask: Question.HANDED_AROUND, new: this.#new().length, choices, followed: followed?.name ?? "" },
      { signal },
    );
    const shown = this.#items.length > MOST_WHOLE ? MOST_LISTED : MOST_WHOLE;
    // made by Python as elements: whatever was typed is escaped in it
    const made = (/** @type {string} */ html) => document.createRange().createContextualFragment(html);
    const bodies = this.#items.map(({ body }) => body);
    this.opened.append(made(before), made(bodies.slice(0, shown).join("")));
    if (bodies.length > shown) {
      const more = document.createElement("button");
      more.type = "button";
      more.textContent = `Show all ${bodies.length.toLocaleString("en-GB")}`;
      more.addEventListener("click", () => {
        more.replaceWith(made(bodies.slice(shown).join("")));
        this.#showKept();
      });
      this.opened.append(more);
    }
    this.opened.append(made(after));
  }

  /** The numbers of all that is new here and not kept yet. */
  #new() {
    return this.#items.flatMap(({ kind, known, kept }, number) => (kind && !known && !kept ? [number] : []));
  }

  /** @param {HTMLElement} drawer */
  async #unfold(drawer) {
    const place = drawer.matches("details[open][data-number]") && drawer.querySelector(":scope > div");
    if (!place || place.childElementCount || !this.#file) return;
    const { file, version } = this.#file;
    const number = Number(drawer.dataset.number);
    const [text] = await file.texts([number]);
    const entries = [{ text, mine: this.#mineOf(text, version)?.text ?? "" }];
    const { items } = await ask({ ask: Question.HANDED_SOME, version, entries, first: number, folded: false });
    place.innerHTML = items[0].body; // made by Python as elements: whatever was typed is escaped in it
  }

  /** @param {How} how @param {number} number */
  async #keep(how, number) {
    const { kind, id } = await this.#take(how === "follow" ? "beside" : how, number);
    if (how === "follow") {
      await follow(id);
      this.#say("Kept, and every page shows its numbers from now on. You find it under House.");
      return this.said.scrollIntoView({ block: "nearest" });
    }
    this.#say(`Kept. ${FOUND[kind] ?? "You find it under House, with your methods and your jobs."}`);
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

  /** @param {AbortSignal} signal */
  async #keepNew(signal) {
    const { file, version } = /** @type {Opened} */ (this.#file);
    const wanted = this.#new();
    let done = 0;
    for (const group of file.groups(wanted)) {
      const texts = await file.texts(group);
      const entries = group.map((number, index) => ({ text: texts[index], id: this.#idOf(number), mine: "" }));
      for (let at = 0; at < entries.length; ) {
        const question = { ask: Question.TAKE, version, entries: entries.slice(at) };
        const { documents, taken } = await ask(question, { signal });
        await putDown(documents);
        for (const number of group.slice(at, at + taken)) this.#items[number].kept = true;
        at += taken;
        done += taken;
        this.#tell(done, wanted.length, "kept");
      }
    }
    this.#showKept();
    this.opened.querySelector("[data-keep=all]")?.remove();
    this.#say("All that was new here is kept.");
    this.reminder.textContent = await reminder();
  }

  /** @param {number} number */
  #idOf(number) {
    const { kind, id, known } = this.#items[number];
    return id && !(known && EVERYTHING[kind].isDated) ? id : newId();
  }

  /** @param {How} how @param {number} number */
  async #take(how, number) {
    const { file, version } = /** @type {Opened} */ (this.#file);
    const { kind, id: own } = this.#items[number];
    const id = how === "beside" ? this.#idOf(number) : own;
    const mine = how === "replace" ? ((await EVERYTHING[kind].newest()).get(id)?.text ?? "") : "";
    const [text] = await file.texts([number]);
    const { documents } = await ask({ ask: Question.TAKE, version, entries: [{ text, id, mine }] });
    const [{ versions: states }] = documents;
    const after = how === "replace" ? (this.#mine.get(`${kind} ${id}`)?.revision ?? 0) : 0;
    if (EVERYTHING[kind].isDated) await keepAll(kind, id, states, after);
    else await putDown(documents);
    this.#items[number].kept = true;
    this.#showKept();
    return { kind, id };
  }

  /** What was kept has no button any more, and says so where it is folded. */
  #showKept() {
    for (const each of this.opened.querySelectorAll("[data-item]:not([data-item=''])"))
      if (this.#items[Number(each.dataset.item)]?.kept) each.remove();
    for (const each of this.opened.querySelectorAll("[data-number]:not(.is-kept)")) {
      if (!this.#items[Number(each.dataset.number)]?.kept) continue;
      each.classList.add("is-kept");
      const summary = each.querySelector("summary");
      summary.textContent = (summary.textContent ?? "").replace(/: [^:]*$/, ": kept now");
    }
  }

  async #choose() {
    const { follows, before, ruler: wanted, look: shown } = /** @type {Opened} */ (this.#file).choices;
    if (follows && !(await last("method", follows))) return this.#say("Keep the method first, then choose it.");
    if (before && (await last("method", before))) await choose("before", before);
    if (follows) await follow(follows);
    if (wanted) keepRuler(wanted);
    if (shown) chooseLook(shown);
    this.#say(CHOSEN);
  }

  /** @param {AbortSignal} signal */
  async #saveEverything(signal) {
    this.#say("");
    const choices = { follows: followedId(), before: await choice("before"), ruler: ruler(), look: look() };
    const saved = await saveCopy(choices, ({ done, total, doing }) => this.#tell(done, total, doing), signal);
    saveFile(`workroom ${saved.copy.at.slice(0, 10)}.json`, saved.blob);
    await rememberCopy(saved.copy);
    const words = inWords(saved.counts) || "your choices; nothing else is kept here yet";
    this.#say([`Saved: ${words}.`, ...saved.said].join(" "));
    this.reminder.textContent = await reminder();
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
