/** Opening what somebody handed over, and saving everything: nothing is kept before the reader has seen it and chosen. */
import { beginning, saveFile } from "./files.js";
import { ask } from "./python.js";
import { isSafe, keep, last, newId, newest, whyNothingLasts } from "./store.js";

const LONGEST = 2_100_000; // [bytes] a little more than Python reads
const MARK = "#handed=";

class HandingPage {
  #items = [];

  constructor(element) {
    this.said = element.querySelector(".said");
    this.opened = element.querySelector(".opened");
    element.querySelector(".tools").hidden = false;
    element.querySelector("[data-do=everything]").addEventListener("click", () => this.#careful(() => this.#saveEverything()));
    element.querySelector("[name=file]").addEventListener("change", ({ target }) => target.files[0] && this.#careful(() => this.#openFile(target.files[0])));
    this.opened.addEventListener("click", ({ target }) => {
      const { keep: how, item } = target.closest("[data-keep]")?.dataset ?? {};
      if (how) this.#careful(() => this.#keep(how, this.#items[Number(item)], target));
    });
  }

  async start() {
    const lasting = (await isSafe()) ? "This browser has promised not to clear away what is kept here." : "This browser has not promised to keep what is here when it needs room: save a file now and then.";
    this.#say((await whyNothingLasts()) || lasting);
    if (!location.hash.startsWith(MARK)) return;
    const fragment = location.hash.slice(MARK.length);
    history.replaceState(history.state, "", location.pathname); // opened once, not again at every reload
    await this.#careful(() => this.#show({ fragment }));
  }

  async #careful(act) {
    try {
      await act();
    } catch (problem) {
      this.#say(problem.message);
    }
  }

  async #openFile(file) {
    await this.#show({ text: await beginning(file, LONGEST), size: file.size });
  }

  async #show(given) {
    this.opened.replaceChildren();
    const kept = Object.fromEntries((await newest("method")).map(({ id, text }) => [id, text]));
    const { body, items, trouble } = await ask({ ask: "handed", kept, ...given });
    if (trouble) return this.#say(trouble);
    this.#items = items;
    this.opened.innerHTML = body; // made by Python as elements: whatever was typed is escaped in it
    this.#say("Nothing is kept yet. Look at it, then choose.");
  }

  async #keep(how, item, button) {
    const beside = how === "beside" && (item.known || !item.id);
    const id = beside ? newId() : item.id;
    const { method } = await ask({ ask: "as another", method: item.text, id });
    await keep("method", id, method, beside ? 0 : ((await last("method", id))?.revision ?? 0));
    for (const each of button.closest("section").querySelectorAll("[data-keep]")) each.remove();
    this.#say("Kept. Choose it on the page of the house method to follow it everywhere.");
  }

  async #saveEverything() {
    const kept = await newest("method");
    const { text, said } = await ask({ ask: "everything", methods: kept.map((each) => each.text) });
    saveFile("workroom.json", text);
    this.#say(said || "Saved.");
  }

  #say(sentence) {
    this.said.textContent = sentence;
  }
}

document$.subscribe(({ body }) => {
  const element = body.querySelector(".kept");
  if (element) new HandingPage(element).start().catch(() => {});
});
