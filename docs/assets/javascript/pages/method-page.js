/** The page of the house method: choose whose method the pages follow, change it, look back, compare, save. */

import { Drafts } from "../keeping/drafts.js";
import { saidAt, saveFile } from "../keeping/files.js";
import { follow, followedId, onFollow, ready } from "../keeping/following.js";
import { Held } from "../keeping/held.js";
import { ruler } from "../keeping/kept.js";
import { putBack, tellOfGone } from "../keeping/put-back.js";
import { RefusedTexts } from "../keeping/refused-texts.js";
import { keep, last, newest, newId, remove, versions, whyNothingLasts } from "../keeping/store.js";
import { Question } from "../python/messages.js";
import { ask } from "../python/python.js";
import { share } from "./sharing.js";

const PAUSE = 900; // [ms] without a keystroke before what was typed is kept

/** @import { Reply } from "../python/messages.js" */

class MethodPage {
  #editing = false;
  #drawings = 0;
  /** @type {Promise<unknown>} */
  #last = Promise.resolve();
  #timer = 0;
  /** @type {Control | null} */
  #waiting = null; // the blank whose text is not kept yet
  #sure = false;

  /** @param {HTMLElement} element */
  constructor(element) {
    this.element = element;
    /** @type {Held | null} */
    this.held = null;
    this.refused = refusedIn(null);
    this.drafts = draftsOf(null);
    this.drawn = false;
    this.file = "";
    this.body = element.querySelector(".house-body");
    this.said = element.querySelector(".said");
    /** @type {HTMLSelectElement} */
    this.followed = element.querySelector("[name=followed]");
    /** @type {HTMLSelectElement} */
    this.other = element.querySelector("[name=other]");
    element
      .querySelector(".tools")
      .addEventListener("click", ({ target }) =>
        this.#inTurn(() => this.#press(target.closest("[data-do]")?.dataset.do)),
      );
    this.followed.addEventListener("change", () => this.#inTurn(() => this.#followOther()));
    this.other.addEventListener("change", () => this.#inTurn(() => this.#compare()));
    this.body.addEventListener("change", ({ target }) => this.#commit(target));
    this.body.addEventListener("input", ({ target }) => this.#later(target));
    this.body.addEventListener("click", (event) => jump(event));
    this.body.addEventListener("click", ({ target }) =>
      this.#inTurn(() => this.#takeOut(target.closest("[data-take-out]")?.dataset.takeOut)),
    );
    this.body.addEventListener("click", ({ target }) =>
      this.#inTurn(() => this.#keepFigure(target.closest("[data-keep-figure]")?.dataset)),
    );
    element
      .querySelector(".house-changes")
      .addEventListener("click", ({ target }) =>
        this.#inTurn(() => this.#backTo(target.closest("[data-back-to]")?.dataset.backTo)),
      );
    for (const each of element.querySelectorAll("details"))
      each.addEventListener("toggle", () => this.#inTurn(() => this.#fold()));
  }

  async start() {
    await ready;
    await this.#inTurn(async () => {
      const restored = await this.#open();
      this.element.querySelector(".tools").hidden = false;
      this.#say(restored || (await whyNothingLasts()));
      await tellOfGone("method");
    });
    document.querySelector(".ruler-choice select")?.addEventListener("change", () => this.#inTurn(() => this.#draw()));
  }

  /**
   * Take in hand the method that is followed; drawn afresh only when something else than this page has changed it. Says
   * whether what was typed last had to be restored.
   */
  async #open() {
    const id = followedId();
    const record = id ? await last("method", id) : undefined;
    let isNew = !this.drawn;
    let restored = "";
    if (this.held?.id !== record?.id) {
      this.#hold(record ? new Held("method", record) : null);
      if (this.held) restored = (await putBack(this.held)).said;
      this.#editing = restored !== "" || this.refused.all.length > 0; // what was refused stands in a blank
      isNew = true;
    } else if (await this.held?.refresh()) isNew = true;
    await this.#list();
    if (isNew) {
      this.element.querySelector(".shared").hidden = true;
      await this.#draw();
    }
    return restored;
  }

  /** @param {Held | null} held */
  #hold(held) {
    this.held = held;
    this.refused = refusedIn(held);
    this.drafts = draftsOf(held);
  }

  /**
   * One thing after another, so that no button acts on what is still being fetched, or before what was typed is kept.
   * @param {() => unknown} act
   */
  #inTurn(act) {
    this.#last = this.#last
      .then(() => this.held?.rest())
      .then(act)
      .catch((problem) => this.#say(problem.message));
    return this.#last;
  }

  async #list() {
    const kept = await newest("method");
    const { names, site } = await namesOf(kept);
    const options = () => [
      new Option(`${site}, the handbook’s own`, ""),
      ...kept.map(({ id }, at) => new Option(names[at].name, id)),
    ];
    const compared = this.other.value;
    this.followed.replaceChildren(...options());
    this.followed.value = followedId();
    this.other.replaceChildren(...options().filter(({ value }) => value !== followedId()));
    this.other.value = [...this.other.options].some(({ value }) => value === compared)
      ? compared
      : this.other.options[0]?.value;
    this.file = names[kept.findIndex(({ id }) => id === followedId())]?.file;
    for (const each of this.element.querySelectorAll("[data-do]"))
      each.hidden = !this.held && ["edit", "file", "share", "remove"].includes(each.dataset.do ?? "");
    for (const each of this.element.querySelectorAll("details.house-changes, details.house-compare"))
      each.hidden = !this.held;
  }

  /** Show the method, as a sheet or with its blanks; whatever stands in the blank in use stays there. */
  async #draw() {
    const drawing = ++this.#drawings;
    const { body } = await ask({
      ask: Question.METHOD_PAGE,
      method: this.held?.text ?? "",
      at: this.held?.at ?? "",
      ruler: ruler(),
      editing: this.#editing,
    });
    if (drawing !== this.#drawings) return; // overtaken by a newer one
    const inUse = /** @type {HTMLInputElement | null} */ (document.activeElement);
    const {
      name,
      value,
      selectionStart = null,
      selectionEnd = null,
    } = this.body.contains(inUse) && inUse ? inUse : NONE;
    const open = new Set([...this.body.querySelectorAll("details[open]")].map((each) => each.dataset.line));
    this.drawn = true;
    this.body.innerHTML = body; // made by Python as elements: whatever was typed is escaped in it
    /** @type {NodeListOf<HTMLDetailsElement>} */
    const lines = this.body.querySelectorAll("details[data-line]");
    for (const each of lines) each.open = open.has(each.dataset.line);
    for (const [path, { text, sentence }] of this.refused.all) {
      const again = this.#blank(path);
      if (!again) continue;
      again.value = text;
      again.closest("details")?.setAttribute("open", "");
      this.#refuse(path, sentence);
    }
    const blank = name && this.#blank(name);
    if (blank) {
      blank.value = value ?? "";
      blank.focus();
      if (selectionStart !== null) blank.setSelectionRange(selectionStart, selectionEnd);
    }
    this.element.querySelector("[data-do=edit]").textContent = this.#editing ? "Done" : "Change it";
    this.element.classList.toggle("is-open", this.#editing);
    await this.#fold();
  }

  /** @param {string} [what] */
  async #press(what) {
    if (!what) return;
    if (what !== "remove") this.#sure = false;
    this.#say(""); // what was said of earlier work is not said of this
    if (what === "new") await this.#begin("");
    else if (what === "copy") await this.#begin(this.held?.text ?? "");
    else if (what === "edit") await this.#toggle();
    else if (what === "print") window.print();
    else if (!this.held) return;
    else if (what === "share") await share(this.element.querySelector(".shared"), this.held.text, "method");
    else if (what === "file") saveFile(this.file, this.held.text);
    else if (what === "remove") await this.#remove(this.held);
  }

  /** @param {string} from */
  async #begin(from) {
    const id = newId();
    const { method } = await ask({ ask: Question.NEW_METHOD, id, from });
    try {
      this.#hold(new Held("method", await keep("method", id, method, 0)));
      this.#editing = true;
      await follow(id);
      await this.#list();
      await this.#draw();
      this.#say("Your own method: it follows the handbook until you change something. Every change is kept at once.");
      /** @type {HTMLInputElement} */
      const name = this.body.querySelector("[name=name]");
      name.focus();
      name.select();
    } catch (problem) {
      this.#say(problem.message);
    }
  }

  async #followOther() {
    this.#say("");
    await follow(this.followed.value);
  }

  async #toggle() {
    this.#editing = !this.#editing;
    await this.#draw();
  }

  /** @param {Held} held */
  async #remove({ id }) {
    if (!this.#sure) {
      this.#sure = true;
      return this.#say("This takes the method out of this browser for good. Press again if you are sure.");
    }
    this.#sure = false;
    this.refused.forget();
    await follow("");
    await remove("method", id);
    this.#say("Removed.");
  }

  /** @param {Control} blank */
  #later(blank) {
    this.drafts.note(blank.name, blank.value, this.held?.revision ?? 0);
    clearTimeout(this.#timer);
    this.#waiting = blank;
    this.#timer = setTimeout(() => this.#commit(blank), PAUSE);
  }

  /** Keep at once what was typed last, as when the page is being left. */
  keepNow() {
    if (this.#waiting) this.#commit(this.#waiting);
  }

  /** @param {Control} blank */
  async #commit(blank) {
    clearTimeout(this.#timer);
    this.#waiting = null;
    await this.#change(blank.name, blank.value, blank);
  }

  /** @param {string} [path] */
  async #takeOut(path) {
    if (!path) return;
    this.refused.takeOut(path);
    await this.#change(path, "");
  }

  /**
   * Of two measures under one name, keep this one: the other ruler then follows it.
   * @param {DOMStringMap} [figure]
   */
  async #keepFigure({ keepFigure: path, figureText: text = "" } = {}) {
    if (!path) return;
    await this.#change(path, text);
    await this.#draw();
  }

  /**
   * @param {string} path @param {string} typed @param {Control | null} [blank]
   * @param {boolean} [isAgain] whether it was refused before, and what has changed since may let it stand
   */
  async #change(path, typed, blank = null, isAgain = false) {
    this.element.querySelector(".shared").hidden = true;
    /** @param {string} method */
    const question = (method) => ask({ ask: Question.METHOD_CHANGE, method, path, typed, ruler: ruler() });
    let refused = false;
    const { drafts, held } = this;
    drafts.send([path]);
    /** @param {Reply} reply */
    const show = (reply) => {
      this.#refuse(path, reply.refusal);
      this.refused.note(path, typed, reply.refusal);
      if (held && !reply.trouble) drafts.done({ [path]: typed }, held.revision);
      refused = Boolean(reply.refusal);
      if (reply.refusal || !blank) return;
      const now = this.#blank(path); // the page may have been drawn afresh meanwhile
      if (now && now !== document.activeElement) now.value = reply.shown;
      const fallback = this.body.querySelector(`.fallback[data-for="${CSS.escape(path)}"]`);
      if (fallback) fallback.hidden = !reply.empty;
      const beside = this.body.querySelector(`.other-ruler[data-for="${CSS.escape(path)}"]`);
      if (beside) [beside.textContent, beside.hidden] = [reply.beside, !reply.beside];
      this.body.querySelector(`.clash:has([data-keep-figure="${CSS.escape(path)}"])`)?.remove();
    };
    await this.#keep(question, show, blank !== null);
    if (refused || isAgain || !path.startsWith("tables.")) return;
    const line = path.split(".", 3).join(".");
    /** @param {[path: string, refusal: object]} refused */
    const mayStandNow = ([each]) =>
      each.startsWith(`${line}.`) || (line.startsWith("tables.pieces.") && each.endsWith(".kinds"));
    for (const [each, { text }] of this.refused.all.filter(mayStandNow))
      await this.#change(each, text, this.#blank(each), true);
    if (!blank?.closest("details")?.matches("[open]:has([data-take-out])")) await this.#draw();
  }

  /** @param {string} [revision] */
  async #backTo(revision) {
    if (!revision || !this.held) return;
    const then = (await versions("method", this.held.id)).find((each) => each.revision === Number(revision));
    await this.#keep(
      async () => ({ method: then?.text }),
      () => {},
    );
    await this.#draw();
  }

  /**
   * Change and keep, and say how it went.
   * @param {(method: string) => Promise<Reply>} question @param {(reply: Reply) => void} show
   * @param {boolean} [hasDraft] whether what is changed was put down as a draft before
   */
  async #keep(question, show, hasDraft = false) {
    if (!this.held) return;
    try {
      const { reply, kept, said } = await this.held.change(question, hasDraft);
      show(reply);
      if (reply.trouble) this.#say(reply.trouble);
      else if (kept) this.#say(said || (await whyNothingLasts()) || saidAt());
      if (said) await this.#draw();
    } catch (problem) {
      this.#say(problem.message);
    }
  }

  /** @param {string} path @returns {HTMLInputElement | null} the blank, of whatever kind */
  #blank(path) {
    return this.body.querySelector(`[name="${CSS.escape(path)}"]`);
  }

  /** @param {string} path */
  #refusal(path) {
    return this.body.querySelector(`.refusal[data-field="${CSS.escape(path)}"]`);
  }

  /** @param {string} path @param {string} [sentence] */
  #refuse(path, sentence = "") {
    const place = this.#refusal(path);
    if (!place) return;
    place.textContent = sentence;
    place.hidden = !sentence;
    this.#blank(path)?.setAttribute("aria-invalid", String(Boolean(sentence)));
  }

  /** What is folded away is worked out when it is opened. */
  async #fold() {
    /** @type {HTMLDetailsElement} */
    const changes = this.element.querySelector(".house-changes");
    /** @type {HTMLDetailsElement} */
    const compare = this.element.querySelector(".house-compare");
    if (this.held && changes.open) {
      const { body } = await ask({ ask: Question.METHOD_CHANGES, versions: await versions("method", this.held.id) });
      changes.querySelector(".listed").innerHTML = body; // made by Python, as all below
    }
    if (this.held && compare.open) await this.#compare();
  }

  async #compare() {
    if (!this.held) return;
    const other = this.other.value ? await last("method", this.other.value) : undefined;
    const { body, trouble } = await ask({
      ask: Question.METHOD_DIFFERENCE,
      method: this.held.text,
      other: other?.text ?? "",
    });
    this.element.querySelector(".house-compare .listed").innerHTML = body ?? "";
    if (trouble) this.#say(trouble);
  }

  /** @param {string} sentence */
  #say(sentence) {
    this.said.textContent = sentence;
  }

  /** Other numbers are followed, or another window has changed this method. */
  follow() {
    return this.#inTurn(async () => {
      const restored = await this.#open();
      if (restored) this.#say(restored);
    });
  }
}

/** @type {Map<string, {name: string, file: string}>} */
const names = new Map(); // by method and state, for the visit

/**
 * How methods are called, and the handbook's own.
 * @param {import("../keeping/store.js").DocumentRecord[]} kept
 */
async function namesOf(kept) {
  /** @param {{id: string, revision: number}} record */
  const key = ({ id, revision }) => `${id} ${revision}`;
  const asked = kept.filter((record) => !names.has(key(record)));
  const { names: found, site } = await ask({ ask: Question.METHODS, methods: asked.map(({ text }) => text) });
  asked.forEach((record, at) => names.set(key(record), found[at]));
  return { names: kept.map((record) => /** @type {{name: string, file: string}} */ (names.get(key(record)))), site };
}

/**
 * A link of the jump list leads to its section; the page itself is drawn by this script, so the theme does not know its
 * places.
 * @param {MouseEvent & {target: HTMLElement}} event
 */
function jump(event) {
  /** @type {HTMLAnchorElement | null} */
  const link = event.target.closest(".jump-list a");
  const heading = link && document.getElementById(link.hash.slice(1));
  if (!heading) return;
  event.preventDefault();
  event.stopPropagation();
  heading.tabIndex = -1;
  heading.focus({ preventScroll: true });
  heading.scrollIntoView();
}

/** @param {Held | null} held */
const refusedIn = (held) => new RefusedTexts(`method/${held?.id ?? ""}`);

/** @param {Held | null} held */
const draftsOf = (held) => new Drafts("method", held?.id ?? "");

/** @type {{name?: string, value?: string, selectionStart?: null, selectionEnd?: null}} */
const NONE = {}; // no blank in use

/** @type {MethodPage | null} */
let page = null;
document$.subscribe(({ body }) => {
  page?.keepNow();
  const element = body.querySelector(".house-method");
  page = element && new MethodPage(element);
  page?.start().catch(() => {});
});
document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && page?.keepNow());
onFollow(() => page?.follow());
