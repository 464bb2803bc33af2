/** The numbers, values and drawings in a page's text, which follow the reader's own. */
import { methodText } from "../keeping/following.js";
import { measures } from "../keeping/in-hand.js";
import { nameOf, ruler, typedIn } from "../keeping/kept.js";
import { Question } from "../python/messages.js";
import { Newest } from "./newest.js";
import { dressPlayed } from "./played.js";

/**
 * @import { Reply } from "../python/messages.js"
 * @import { Section } from "./section.js"
 * @import { Texts } from "../keeping/kept.js"
 */

const BREATH = 50; // [ms] without a new answer before the numbers in the text follow it

/**
 * The numbers and figures that stand in the text. They follow what the reader writes into the calculator that is filled
 * in just as they are, here or on another page.
 * @param {HTMLElement} page @param {Section[]} sections
 */
export function numbers(page, sections) {
  const newest = new Newest();
  /** @param {string} kind @returns {HTMLElement[]} */
  const all = (kind) => [.../** @type {NodeListOf<HTMLElement>} */ (page.querySelectorAll(`[data-${kind}]`))];
  const [inText, values, figures] = [all("number"), all("value"), all("figure")];
  figures.forEach(dress);
  const here = new Map(sections.map((section) => [section.name, section]));
  /** @type {Map<string, {texts: Texts, readOn: string}>} */
  const elsewhere = new Map();
  const readAgain = () => {
    for (const name of [...inText, ...figures].map(calculationOf))
      if (!here.has(name)) elsewhere.set(name, typedIn(name));
  };
  readAgain();
  /** @param {string} name */
  const isHers = (name) => Object.keys(elsewhere.get(name)?.texts ?? {}).length > 0;
  /** @param {string} [text] */
  const filled = (text = "") => {
    const wanted = JSON.parse(text);
    const name = nameOf(wanted.calculator, wanted.given);
    const section = here.get(name);
    const { texts, readOn } = section
      ? { texts: section.typed, readOn: section.readOn }
      : (elsewhere.get(name) ?? { texts: {}, readOn: "" });
    // what stands in `but` Python puts in place of the reader's own
    return { ...wanted, given: { ...wanted.given, ...texts }, readOn };
  };
  const together = groups([...inText, ...figures]);
  /** @param {Reply} reply @returns {boolean[]} */
  const waits = ({ numbers, figures: drawings }) => {
    const refused = new Set(
      [...numbers, ...drawings].flatMap((each, index) => (each === null ? [together[index]] : [])),
    );
    return [...inText, ...figures].map((_, index) => refused.has(together[index]));
  };
  const request = () => ({
    ask: Question.NUMBERS,
    numbers: inText.map((each) => filled(each.dataset.number)),
    values: values.map((each) => each.dataset.value),
    figures: figures.map((each) => filled(each.dataset.figure)),
    measures: measures(),
    ruler: ruler(),
  });
  let shownFor = ""; // the method that the numbers on the page are of
  /** @param {Reply} reply */
  function show(reply) {
    const none = shownFor === methodText() ? null : reply.none; // a number of another method may not stay
    const waiting = none === null ? waits(reply) : []; // what shares a calculation waits together
    inText.forEach((each, index) => {
      if (!waiting[index]) each.textContent = reply.numbers[index] ?? none;
    });
    values.forEach((each, index) => (each.textContent = reply.values[index]));
    figures.forEach((each, index) => {
      if (waiting[inText.length + index]) return;
      if (reply.figures[index]) redraw(each, reply.figures[index]);
      else if (none) {
        each.replaceChildren(none);
        drawnLast.delete(each);
      }
    });
    shownFor = methodText();
    const hers = [...inText, ...figures].filter(
      (each, index) => (isHers(calculationOf(each)) || reply.hers[index]) && !waiting[index],
    );
    all("hers").forEach((whose) => {
      whose.dataset.house ??= whose.textContent ?? "";
      const line = whose.closest("li");
      whose.textContent = hers.some((each) => line?.contains(each)) ? (whose.dataset.hers ?? "") : whose.dataset.house;
    });
    // what she wrote elsewhere and cannot be used is not what stands here
    page.querySelector(".follows").hidden = !hers.length;
  }
  const answer = () => newest.ask(request(), show, () => {});
  let soon = /** @type {ReturnType<typeof setTimeout> | undefined} */ (undefined);
  function follow() {
    clearTimeout(soon);
    soon = setTimeout(answer, BREATH);
  }
  const isTyped = () => [...elsewhere.keys()].some(isHers) || Object.keys(measures()).length > 0;
  return { answer, follow, readAgain, isTyped };
}

/** The name of the calculation that a number or figure in the text belongs to. @param {HTMLElement} shown */
function calculationOf({ dataset }) {
  const { calculator, given } = JSON.parse(dataset.number ?? dataset.figure ?? "{}");
  return nameOf(calculator, given);
}

const SENTENCE = "p, li, td, th, dd, dt, figcaption";

/**
 * Which numbers and figures may only change together: those of one calculation, and those of one sentence.
 * @param {HTMLElement[]} shown
 * @returns {object[]} for each of them its group: the same object for all that belong together
 */
function groups(shown) {
  // a calculation by its name, or a sentence by its element → the calculation that speaks for all
  /** @type {Map<string | Element, string | Element>} */
  const groupOf = new Map();
  /** @param {any} each @returns {any} */
  const leader = (each) => (groupOf.get(each) === each ? each : leader(groupOf.get(each)));
  /** @param {string | Element} one @param {string | Element} other */
  const join = (one, other) => {
    for (const each of [one, other]) if (!groupOf.has(each)) groupOf.set(each, each);
    groupOf.set(leader(one), leader(other));
  };
  const names = shown.map(calculationOf);
  shown.forEach((each, index) => join(names[index], each.closest(SENTENCE) ?? each));
  return names.map(leader);
}

/** What Python drew last in a figure: what is shown since it was dressed, or played, is another text. */
const drawnLast = new WeakMap();

/** Let a figure's steps be played. @param {HTMLElement} figure */
function dress(figure) {
  drawnLast.set(figure, figure.innerHTML);
  dressPlayed(figure, figure);
}

/** Show what Python has drawn, unless it is there already. @param {HTMLElement} figure @param {string} html */
function redraw(figure, html) {
  const made = document.createElement("template");
  made.innerHTML = html;
  const { innerHTML, childNodes } = /** @type {Element} */ (made.content.firstElementChild);
  if (drawnLast.get(figure) === innerHTML) return;
  const isOpen = figure.querySelector("details.played")?.hasAttribute("open");
  figure.replaceChildren(...childNodes);
  if (isOpen) figure.querySelector("details.played")?.setAttribute("open", "");
  dress(figure);
}
