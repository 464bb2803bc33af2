/** The page that tells where things are kept, and tries each place at a press. */
import { marksNow, reminder } from "../keeping/copies.js";
import { EVERYTHING, inWords } from "../keeping/everything.js";
import { otherPlaces } from "../keeping/other-places.js";
import { onChange, whatKeeps } from "../keeping/store.js";
import { tried } from "../keeping/tried.js";
import { isOnDisk } from "../site.js";

const MEGABYTE = 1_000_000;
const NOTHING = "Nothing yet.";

class WhereKeptPage {
  /** @param {HTMLElement} element */
  constructor(element) {
    this.element = element;
    this.tested = element.querySelector(".tested");
    element.querySelector(".tools").hidden = false;
    element.querySelector("[data-do=test]").addEventListener("click", () => this.#test());
  }

  async show() {
    const [keeps, counts, others] = await Promise.all([whatKeeps(), marksNow(), otherPlaces()]);
    /** @param {(isDated: boolean) => boolean} wanted */
    const words = (wanted) => inWords(counted(counts, wanted)) || NOTHING;
    this.#say("database", keeps.database ? words((isDated) => isDated) : "Not to be had.");
    this.#say("journal", keeps.journal ? "The same." : whyNoJournal(keeps.database));
    this.#say(
      "texts",
      words((isDated) => !isDated),
    );
    this.#say("handbook", ofHandbook());
    this.element.querySelector(".reminder").textContent = await reminder();
    this.element.querySelector(".lasting").textContent = [
      keeps.trouble ||
        (keeps.persisted
          ? "The browser has promised not to clear this away."
          : "The browser has not promised to keep this when it needs room."),
      keeps.usage ? `In all it takes ${Math.max(1, Math.round(keeps.usage / MEGABYTE))} MB of this device.` : "",
      isOnDisk
        ? "This is a copy on a disk: other pages opened from a disk in this browser could read what you write."
        : "",
      others.length && !isOnDisk
        ? `Other handbooks at this address keep things of their own: ${others.join(", ")}.`
        : "",
    ]
      .filter(Boolean)
      .join(" ");
  }

  /** @param {string} place @param {string} words */
  #say(place, words) {
    const begun = words.charAt(0).toUpperCase() + words.slice(1);
    this.#row(place).querySelector(".so-here").textContent = begun.endsWith(".") ? begun : `${begun}.`;
  }

  /** @param {string} place */
  #row(place) {
    return this.element.querySelector(`[data-place="${place}"]`);
  }

  async #test() {
    const places = [...this.element.querySelectorAll("[data-place]")].map(({ dataset }) => dataset.place ?? "");
    this.tested.replaceChildren();
    for (const place of places) {
      const { passed, words } = await tried(place);
      const name = this.#row(place).querySelector("th").textContent;
      const line = Object.assign(document.createElement("li"), {
        textContent: `${passed ? "✓" : "✗"} ${name}: ${words}`,
      });
      line.className = passed ? "passed" : "trouble";
      this.tested.append(line);
    }
    await this.show();
  }
}

/**
 * How many things of each kind are here, of those with or without a day.
 * @param {Record<string, Record<string, string>>} marks @param {(isDated: boolean) => boolean} wanted
 */
function counted(marks, wanted) {
  const kinds = Object.entries(marks).filter(([kind]) => wanted(EVERYTHING[kind].isDated));
  return Object.fromEntries(kinds.map(([kind, each]) => [kind, Object.keys(each).length]));
}

/** @param {boolean} hasDatabase */
function whyNoJournal(hasDatabase) {
  if (isOnDisk) return "A copy on a disk has none: save a file now and then.";
  if (!globalThis.isSecureContext) return "None: this address is not a secure one (https).";
  return hasDatabase ? "Begun with the first thing you keep." : "None.";
}

function ofHandbook() {
  const meta = document.head.querySelector("meta[name=edition]");
  const size = meta instanceof HTMLMetaElement ? `${meta.dataset.megabytes} MB` : "";
  if (isOnDisk) return "This copy on a disk is the handbook itself.";
  if (!globalThis.isSecureContext) return "Not kept: this address is not a secure one (https).";
  return navigator.serviceWorker?.controller ? `All of it, ${size}.` : `Not kept here yet; it takes ${size}.`;
}

/** @type {WhereKeptPage | null} */
let page = null;
document$.subscribe(({ body }) => {
  const element = body.querySelector(".where-kept");
  page = element && new WhereKeptPage(element);
  page?.show().catch(() => {});
});
onChange(({ kind }) => kind !== "test" && page?.show().catch(() => {}));
