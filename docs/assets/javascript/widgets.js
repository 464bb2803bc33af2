/** Makes the calculators and numbers of a page live: the page is complete without this, Python only keeps it up to date. */
import { keepRuler, ruler } from "./kept.js";
import { ask } from "./python.js";
import { Section } from "./section.js";

/** Asks for the newest state only: a question overtaken by a newer one is dropped. */
class Newest {
  #open = null;

  async ask(request, show, fail) {
    this.#open?.abort();
    const { signal } = (this.#open = new AbortController());
    try {
      const reply = await ask(request, { signal, onPartial: (partial) => signal.aborted || show(partial) });
      if (!signal.aborted) show(reply);
    } catch (problem) {
      if (!signal.aborted) fail(problem.message);
    }
  }
}

/** A calculator that stands alone. */
function alone(element) {
  const newest = new Newest();
  const section = new Section(element, answer);
  function answer() {
    const { calculator, given, typed } = section;
    const request = { ask: "calculator", calculator, given, typed, ruler: ruler() };
    return newest.ask(request, (reply) => section.show(reply), (sentence) => section.keepOld(sentence));
  }
  return { answer, isTyped: () => section.isTyped };
}

/** Several calculators of which each takes over what the one before worked out. */
function walk(element) {
  const newest = new Newest();
  const sections = [...element.querySelectorAll(".calculator")].map((each) => {
    each.dataset.kept = `${element.dataset.walk}/${each.dataset.calculator}`;
    return new Section(each, answer);
  });
  function answer() {
    const typed = Object.fromEntries(sections.map((section) => [section.calculator, section.typed]));
    const request = { ask: "walk", walk: element.dataset.walk, typed, ruler: ruler() };
    const show = ({ steps }) => sections.forEach((section) => section.show(steps[section.calculator]));
    return newest.ask(request, show, (sentence) => sections.forEach((section) => section.keepOld(sentence)));
  }
  return { answer, isTyped: () => sections.some((section) => section.isTyped) };
}

/** The numbers and figures that stand in the text. */
function numbers(page) {
  const newest = new Newest();
  const [inText, values, figures] = ["[data-number]", "[data-value]", "[data-figure]"].map((each) => [...page.querySelectorAll(each)]);
  const request = () => ({
    ask: "numbers",
    numbers: inText.map((each) => JSON.parse(each.dataset.number)),
    values: values.map((each) => each.dataset.value),
    figures: figures.map((each) => JSON.parse(each.dataset.figure)),
    ruler: ruler(),
  });
  function show(reply) {
    inText.forEach((each, index) => (each.textContent = reply.numbers[index]));
    values.forEach((each, index) => (each.textContent = reply.values[index]));
    figures.forEach((each, index) => (each.innerHTML = reply.figures[index]));
  }
  return { answer: () => newest.ask(request(), show, () => {}), isTyped: () => false };
}

function upgrade(page) {
  const choice = page.querySelector(".ruler-choice");
  if (!choice) return;
  const walks = [...page.querySelectorAll(".walk")].map(walk);
  const lone = [...page.querySelectorAll(".calculator")].filter((each) => !each.closest(".walk")).map(alone);
  const live = [...walks, ...lone, numbers(page)];
  const select = choice.querySelector("select");
  if (ruler()) select.value = ruler();
  choice.hidden = false;
  select.addEventListener("change", () => {
    keepRuler(select.value);
    live.forEach((each) => each.answer());
  });
  live.filter((each) => each.isTyped() || ruler()).forEach((each) => each.answer());
}

document$.subscribe(({ body }) => upgrade(body));
