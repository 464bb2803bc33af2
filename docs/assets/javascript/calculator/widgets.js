/**
 * Makes the calculators and numbers of a page live: the page is complete without this, Python only keeps it up to date.
 */

import { restored } from "../keeping/at-once.js";
import { methodText, onFollow, ready } from "../keeping/following.js";
import { measures, onMeasures } from "../keeping/in-hand.js";
import { keepRuler, ruler } from "../keeping/kept.js";
import { Question } from "../python/messages.js";
import { onState, startWarmUp } from "../python/python.js";
import { arrived, offer } from "./carried.js";
import { jobOf } from "./job-in-hand.js";
import { Newest } from "./newest.js";
import { numbers } from "./numbers-in-text.js";
import { Section } from "./section.js";
import { tellSoon } from "./summary.js";
import { tellSteps } from "./walk-steps.js";

const PATIENCE = 300; // [ms] before an answer that is still awaited is said to be
const AT_ONCE = 12; // [ms] of making a page live before the browser may do something else
const CALM = 500; // [ms] of an awake Python before it warms up
const WAITING = "Your numbers are being worked out. Until then an earlier answer stands here.";

/**
 * A calculator that stands alone.
 * @param {HTMLElement} element
 * @param {() => void} answered called when it has shown an answer
 * @param {(section: Section, names: string[]) => void} changed called when the reader has changed blanks
 */
function alone(element, answered, changed) {
  const section = new Section(element, (names) => {
    live.answer();
    changed(section, names);
  });
  const { calculator, given } = section;
  const live = liveForms(
    [section],
    (typedOf) => ({ ask: Question.CALCULATOR, calculator, given, typed: typedOf(section), measures: measures() }),
    (reply) => ({ [calculator]: reply }),
    answered,
  );
  const take = (texts) => {
    section.take(texts);
    live.answer();
    changed(section, Object.keys(texts));
  };
  const readAgain = (names) => section.readAgain(names);
  const takesOver = element.hasAttribute("data-takes-over") ? () => Object.keys(measures()).length > 0 : () => false;
  const follow = () => (section.follow() || (takesOver() && !section.isChanging)) && live.answerSoon();
  return {
    ...live,
    follow,
    isTyped: () => live.isTyped() || takesOver(),
    section,
    take,
    readAgain,
    example: { ask: Question.CALCULATOR, calculator, given, typed: {} },
  };
}

/**
 * A measure that several calculators of a page ask for is written once: what stands in one of its blanks stands in the
 * others.
 */
function spread(lone, from, names) {
  for (const { section, answer } of lone) if (section !== from && section.takeFrom(from, names)) answer();
}

/** Several calculators of which each takes over what the one before worked out. */
function walk(element) {
  const job = jobOf(element);
  const sections = [...element.querySelectorAll(".calculator")].map(
    (each) => new Section(each, () => live.answer(), job.keeper),
  );
  const live = liveForms(
    sections,
    (typedOf) => ({
      ask: Question.WALK,
      walk: element.dataset.walk,
      typed: Object.fromEntries(sections.map((section) => [section.calculator, typedOf(section)])),
      ...job.question,
    }),
    (reply) => reply.steps,
  );
  job.begin(sections, live.answer);
  tellSteps(element);
  const example = { ask: Question.WALK, walk: element.dataset.walk, typed: {} };
  const readAgain = (names) => job.id || sections.forEach((section) => section.readAgain(names));
  const takesOver = () => !job.isOpen && Object.keys(measures()).length > 0;
  const follow = () => (sections.map((section) => section.follow()).includes(true) || takesOver()) && live.answerSoon();
  return { ...live, follow, isTyped: () => job.isOpen || live.isTyped() || takesOver(), example, readAgain };
}

/**
 * Calculators that are answered by one question.
 * @param {Section[]} sections
 * @param {(typedOf: (section: Section) => object) => object} question what to ask, without the ruler
 * @param {(reply: object) => object} split the reply of each calculator, by its name
 * @param {() => void} [answered] called when the answers are shown
 */
function liveForms(sections, question, split, answered = () => {}) {
  const newest = new Newest();
  let awaited = 0; // questions whose answer has not come
  const each = (act) => sections.forEach((section) => act(section));
  const isAwaited = (more) => {
    awaited += more;
    each((section) => section.isAwaited(awaited > 0));
  };
  const othersInUse = (now) =>
    [...new Set(sections.flatMap((section) => section.rulersInUse))].filter((readOn) => readOn !== now);
  const ask = (readOn, show, typedOf = (section) => section.typed) =>
    newest.ask(
      { ...question(typedOf), ruler: readOn },
      (reply) => show(split(reply)),
      (sentence) => each((section) => section.keepOld(sentence)),
    );

  async function answer() {
    const late = setTimeout(() => each((section) => section.keepOld(WAITING)), PATIENCE);
    isAwaited(1);
    try {
      const now = ruler();
      for (const other of othersInUse(now)) {
        await ask(
          other,
          (replies) => each((section) => section.carryOver(replies[section.calculator].written, other, now)),
          (section) => section.typedOn(other),
        );
      }
      if (othersInUse(now).length) return;
      await ask(now, (replies) => each((section) => section.show(replies[section.calculator])));
      answered();
    } finally {
      clearTimeout(late);
      isAwaited(-1);
      tellSoon(sections);
    }
  }
  let soon = 0;
  /** Once the calculator that she is writing in has asked: its answer is the one that she waits for. */
  function answerSoon() {
    clearTimeout(soon);
    soon = setTimeout(answer);
  }
  return { answer, answerSoon, isTyped: () => sections.some((section) => section.isTyped) };
}

let live = []; // all that the page in view shows of Python's
let waiting = null; // numbers that came with an address of this path, until the reader has taken or declined them
let offerWaiting = () => {}; // on the page in view, once it is known whose numbers stand there

/** @param {URL | Location} address */
function noteArrival({ hash, pathname }) {
  const brought = arrived(hash);
  if (brought) waiting = { pathname, brought };
}

/** Lets the browser draw and hear the reader, wherever it has waited long enough for it. */
function restNow() {
  let began = document.readyState === "complete" ? performance.now() : Number.NEGATIVE_INFINITY;
  return async () => {
    if (performance.now() - began < AT_ONCE) return;
    await new Promise((resolve) => setTimeout(resolve));
    began = performance.now();
  };
}

async function upgrade(page) {
  live = [];
  noteArrival(location); // at once: the theme writes into the address as the page is scrolled
  offerWaiting = () => {};
  const choice = page.querySelector(".ruler-choice");
  if (!choice) return;
  const mine = []; // what `live` is until another page is in view
  live = mine;
  const rest = restNow();
  if (document.readyState !== "complete") await rest(); // first the theme, then the page is drawn
  for (const each of page.querySelectorAll(".walk")) {
    mine.push(walk(each));
    await rest();
    if (live !== mine) return;
  }
  const elements = [...page.querySelectorAll(".calculator")].filter((each) => !each.closest(".walk"));
  const lone = [];
  let inText = null;
  for (const each of elements) {
    const one = alone(
      each,
      () => inText?.follow(),
      (from, names) => spread(lone, from, names),
    );
    lone.push(one);
    mine.push(one);
    await rest();
    if (live !== mine) return;
  }
  for (const { section } of lone)
    for (const { section: other } of lone)
      other.takeFrom(
        section,
        Object.keys(section.typed).filter((name) => !Object.hasOwn(other.typed, name)),
      );
  inText = numbers(
    page,
    lone.map(({ section }) => section),
  );
  mine.push(inText);
  warmUpSoon();
  const select = choice.querySelector("select");
  if ([...select.options].some(({ value }) => value === ruler())) select.value = ruler();
  choice.hidden = false;
  select.addEventListener("change", () => {
    keepRuler(select.value);
    live.forEach((each) => each.answer());
  });
  await ready;
  live.filter((each) => each.isTyped() || ruler() || methodText()).forEach((each) => each.answer());
  offerWaiting = () => {
    if (waiting?.pathname !== location.pathname) return;
    const { brought } = waiting;
    const { name, texts, adds } = brought;
    const meant =
      lone.find(({ section }) => section.name === name) ?? lone.find(({ section }) => section.calculator === name);
    const answered = (act) => () => {
      waiting = null;
      act();
    };
    if (meant)
      offer(
        meant.section,
        brought,
        answered(() => meant.take(adds ? meant.section.withMore(texts) : texts)),
        answered(() => {}),
      );
  };
  offerWaiting();
}

/** Python warms up on the worked example of the page in view. */
function warmUpSoon() {
  const withExample = live.find(({ example }) => example);
  if (withExample) setTimeout(() => startWarmUp({ ...withExample.example, ruler: "" }), CALM);
}

onState(({ name }) => name === "ready" && warmUpSoon());

restored.then((names) => {
  if (!names.size) return;
  live.forEach((each) => each.readAgain(names));
  const select = document.querySelector(".ruler-choice select");
  if (select && ruler()) select.value = ruler();
  live.forEach((each) => each.answer());
});

// Of the event, since the theme may have written into the address by now; and it may put the page there anew, which
// then offers what waits.
addEventListener("hashchange", ({ newURL }) => {
  noteArrival(new URL(newURL));
  offerWaiting();
});

// Of the link, since on the way the theme may write another part into the address.
document.addEventListener(
  "click",
  ({ target }) => {
    /** @type {HTMLAnchorElement | null} */
    const link = target.closest?.("a.onward");
    if (link) noteArrival(new URL(link.href));
  },
  { capture: true },
);

onFollow(() => live.forEach((each) => each.answer()));
onMeasures(() => live.forEach((each) => each.follow()));

document$.subscribe(({ body }) => upgrade(body));
