/** The page of the house method: choose whose method the pages follow, change it, look back, compare, save. */

import { saidAt, saveFile } from "../keeping/files.js";
import { follow, followedId, onFollow, ready } from "../keeping/following.js";
import { Held } from "../keeping/held.js";
import { ruler } from "../keeping/kept.js";
import { RefusedTexts } from "../keeping/refused-texts.js";
import { keep, last, newest, newId, remove, versions, whyNothingLasts } from "../keeping/store.js";
import { Question } from "../python/messages.js";
import { ask } from "../python/python.js";
import { share } from "./sharing.js";

const PAUSE = 900; // [ms] without a keystroke before what was typed is kept

class MethodPage {
  #editing = false;
  #drawings = 0;
  #last = Promise.resolve();
  #timer = null;
  #waiting = null; // the blank whose text is not kept yet
  #sure = false;

  constructor(element) {
    this.element = element;
    this.#hold(null);
    this.body = element.querySelector(".house-body");
    this.said = element.querySelector(".said");
    this.followed = element.querySelector("[name=followed]");
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
      await this.#open();
      this.element.querySelector(".tools").hidden = false;
      this.#say(await whyNothingLasts());
    });
    document.querySelector(".ruler-choice select")?.addEventListener("change", () => this.#inTurn(() => this.#draw()));
  }

  /** Take in hand the method that is followed; drawn afresh only when something else than this page has changed it. */
  async #open() {
    const id = followedId();
    const record = id && (await last("method", id));
    let isNew = !this.drawn;
    if (this.held?.id !== record?.id) {
      this.#hold(record ? new Held("method", record) : null);
      this.#editing = this.refused.all.length > 0; // what was refused stands in a blank
      isNew = true;
    } else if (await this.held?.refresh()) isNew = true;
    await this.#list();
    if (isNew) {
      this.element.querySelector(".shared").hidden = true;
      await this.#draw();
    }
  }

  #hold(held) {
    this.held = held;
    this.refused = new RefusedTexts(`method/${held?.id ?? ""}`);
  }

  /**
   * One thing after another, so that no button acts on what is still being fetched, or before what was typed is kept.
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
    const { names, site } = await ask({ ask: Question.METHODS, methods: kept.map(({ text }) => text) });
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
      each.hidden = !this.held && ["edit", "file", "share", "remove"].includes(each.dataset.do);
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
    const { name, value, selectionStart, selectionEnd } = this.body.contains(document.activeElement)
      ? document.activeElement
      : {};
    const open = new Set([...this.body.querySelectorAll("details[open]")].map((each) => each.dataset.line));
    this.drawn = true;
    this.body.innerHTML = body; // made by Python as elements: whatever was typed is escaped in it
    for (const each of this.body.querySelectorAll("details[data-line]")) each.open = open.has(each.dataset.line);
    for (const [path, { text, sentence }] of this.refused.all) {
      const again = this.#blank(path);
      if (!again) continue;
      again.value = text;
      again.closest("details")?.setAttribute("open", "");
      this.#refuse(path, sentence);
    }
    const blank = name && this.#blank(name);
    if (blank) {
      blank.value = value;
      blank.focus();
      if (selectionStart != null) blank.setSelectionRange(selectionStart, selectionEnd);
    }
    this.element.querySelector("[data-do=edit]").textContent = this.#editing ? "Done" : "Change it";
    this.element.classList.toggle("is-open", this.#editing);
    await this.#fold();
  }

  async #press(what) {
    if (!what) return;
    if (what !== "remove") this.#sure = false;
    this.#say(""); // what was said of earlier work is not said of this
    if (what === "new") await this.#begin("");
    else if (what === "copy") await this.#begin(this.held?.text ?? "");
    else if (what === "edit") await this.#toggle();
    else if (what === "print") window.print();
    else if (what === "share") await share(this.element.querySelector(".shared"), this.held.text, "method");
    else if (what === "file") saveFile(this.file, this.held.text);
    else if (what === "remove") await this.#remove();
  }

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

  async #remove() {
    if (!this.#sure) {
      this.#sure = true;
      return this.#say("This takes the method out of this browser for good. Press again if you are sure.");
    }
    this.#sure = false;
    const { id } = this.held;
    this.refused.forget();
    await follow("");
    await remove("method", id);
    this.#say("Removed.");
  }

  #later(blank) {
    clearTimeout(this.#timer);
    this.#waiting = blank;
    this.#timer = setTimeout(() => this.#commit(blank), PAUSE);
  }

  /** Keep at once what was typed last, as when the page is being left. */
  keepNow() {
    if (this.#waiting) this.#commit(this.#waiting);
  }

  async #commit(blank) {
    clearTimeout(this.#timer);
    this.#waiting = null;
    await this.#change(blank.name, blank.value, blank);
  }

  async #takeOut(path) {
    if (!path) return;
    this.refused.takeOut(path);
    await this.#change(path, "");
  }

  /** Of two measures under one name, keep this one: the other ruler then follows it. */
  async #keepFigure({ keepFigure: path, figureText: text } = {}) {
    if (!path) return;
    await this.#change(path, text);
    await this.#draw();
  }

  /** @param {boolean} [isAgain] whether it was refused before, and what has changed since may let it stand */
  async #change(path, typed, blank, isAgain = false) {
    this.element.querySelector(".shared").hidden = true;
    const question = (method) => ask({ ask: Question.METHOD_CHANGE, method, path, typed, ruler: ruler() });
    let refused = false;
    await this.#keep(question, (reply) => {
      this.#refuse(path, reply.refusal);
      this.refused.note(path, typed, reply.refusal);
      refused = Boolean(reply.refusal);
      if (reply.refusal || !blank) return;
      const now = this.#blank(path); // the page may have been drawn afresh meanwhile
      if (now && now !== document.activeElement) now.value = reply.shown;
      const fallback = this.body.querySelector(`.fallback[data-for="${CSS.escape(path)}"]`);
      if (fallback) fallback.hidden = !reply.empty;
      const beside = this.body.querySelector(`.other-ruler[data-for="${CSS.escape(path)}"]`);
      if (beside) [beside.textContent, beside.hidden] = [reply.beside, !reply.beside];
      this.body.querySelector(`.clash:has([data-keep-figure="${CSS.escape(path)}"])`)?.remove();
    });
    if (refused || isAgain || !path.startsWith("tables.")) return;
    const line = path.split(".", 3).join(".");
    const mayStandNow = ([each]) =>
      each.startsWith(`${line}.`) || (line.startsWith("tables.pieces.") && each.endsWith(".kinds"));
    for (const [each, { text }] of this.refused.all.filter(mayStandNow))
      await this.#change(each, text, this.#blank(each), true);
    if (!blank?.closest("details")?.matches("[open]:has([data-take-out])")) await this.#draw();
  }

  async #backTo(revision) {
    if (!revision) return;
    const then = (await versions("method", this.held.id)).find((each) => each.revision === Number(revision));
    await this.#keep(
      async () => ({ method: then.text }),
      () => {},
    );
    await this.#draw();
  }

  /** Change and keep, and say how it went. */
  async #keep(question, show) {
    try {
      const { reply, kept, said } = await this.held.change(question);
      show(reply);
      if (reply.trouble) this.#say(reply.trouble);
      else if (kept) this.#say(said || (await whyNothingLasts()) || saidAt());
      if (said) await this.#draw();
    } catch (problem) {
      this.#say(problem.message);
    }
  }

  #blank(path) {
    return this.body.querySelector(`[name="${CSS.escape(path)}"]`);
  }

  #refusal(path) {
    return this.body.querySelector(`.refusal[data-field="${CSS.escape(path)}"]`);
  }

  #refuse(path, sentence = "") {
    const place = this.#refusal(path);
    if (!place) return;
    place.textContent = sentence;
    place.hidden = !sentence;
    this.#blank(path).setAttribute("aria-invalid", String(Boolean(sentence)));
  }

  /** What is folded away is worked out when it is opened. */
  async #fold() {
    const [changes, compare] = [
      this.element.querySelector(".house-changes"),
      this.element.querySelector(".house-compare"),
    ];
    if (this.held && changes.open) {
      const { body } = await ask({ ask: Question.METHOD_CHANGES, versions: await versions("method", this.held.id) });
      changes.querySelector(".listed").innerHTML = body; // made by Python, as all below
    }
    if (this.held && compare.open) await this.#compare();
  }

  async #compare() {
    const other = this.other.value && (await last("method", this.other.value));
    const { body, trouble } = await ask({
      ask: Question.METHOD_DIFFERENCE,
      method: this.held.text,
      other: other?.text ?? "",
    });
    this.element.querySelector(".house-compare .listed").innerHTML = body ?? "";
    if (trouble) this.#say(trouble);
  }

  #say(sentence) {
    this.said.textContent = sentence;
  }

  /** Other numbers are followed, or another window has changed this method. */
  follow() {
    return this.#inTurn(() => this.#open());
  }
}

/**
 * A link of the jump list leads to its section; the page itself is drawn by this script, so the theme does not know its
 * places.
 */
function jump(event) {
  const link = event.target.closest(".jump-list a");
  const heading = link && document.getElementById(link.hash.slice(1));
  if (!heading) return;
  event.preventDefault();
  event.stopPropagation();
  heading.tabIndex = -1;
  heading.focus({ preventScroll: true });
  heading.scrollIntoView();
}

let page = null;
document$.subscribe(({ body }) => {
  page?.keepNow();
  const element = body.querySelector(".house-method");
  page = element && new MethodPage(element);
  page?.start().catch(() => {});
});
document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && page?.keepNow());
onFollow(() => page?.follow());
