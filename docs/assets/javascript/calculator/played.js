/**
 * Steps that are played: a slider and a button take one drawing from step to step. Python drew what stays and both
 * faces of what moves; this lays them on the sheet (calculators/drawing/played.py).
 */
import { bend, fold, turn } from "./moves.js";

const FOLD = 900; // [ms] for one fold
const REST = 700; // [ms] at a step
const STILL = 1500; // [ms] at a step where nothing is shown moving
const calm = matchMedia("(prefers-reduced-motion: reduce)");

/** @type {WeakMap<Element, number>} what is being played, and its next frame */
const running = new WeakMap();

/**
 * Let an answer's steps be played. The place is kept on the section, so that it outlives the answer.
 * @param {HTMLElement} answer the answer, whether it stands in the page yet or not
 * @param {HTMLElement} section the calculator it belongs to
 */
export function dressPlayed(answer, section) {
  const player = /** @type {HTMLDetailsElement | null} */ (answer.querySelector("details.played"));
  if (!player) return;
  player.hidden = false;
  const slider = sliderOf(player);
  slider.value = String(Math.min(Math.round(Number(section.dataset.played ?? 0)), Number(slider.max)));
  slider.setAttribute("value", slider.value);
  if (player.open) fill(player);
}

/** @param {Element} player */
const sliderOf = (player) => /** @type {HTMLInputElement} */ (player.querySelector("input"));
/** @param {Element} player */
const stageOf = (player) => /** @type {SVGSVGElement} */ (player.querySelector("svg"));
/** @param {Element} svg @returns {SVGGElement[]} */
const stepsOf = (svg) =>
  /** @type {SVGGElement[]} */ (/** @type {unknown} */ ([...svg.querySelectorAll(":scope > .step")]));

/** Whether a place comes before the first step. @param {SVGGElement} step */
const isAhead = (step) => "ahead" in step.dataset;

/**
 * The drawing of each step in the list, undefined where a place is no step.
 * @param {Element} player @returns {(SVGSVGElement | undefined)[]}
 */
function drawings(player) {
  const drawn = [...(player.parentElement?.querySelectorAll(":scope > ol > li svg") ?? [])];
  return stepsOf(stageOf(player)).map((step) =>
    isAhead(step) ? undefined : /** @type {SVGSVGElement | undefined} */ (drawn.shift()),
  );
}

/** Put each step's own drawing on the stage. @param {Element} player */
function fill(player) {
  const drawn = drawings(player);
  stepsOf(stageOf(player)).forEach((step, index) => {
    if (drawn[index] && !("drawn" in step.dataset)) step.replaceChildren(...drawn[index].cloneNode(true).childNodes);
  });
  show(player, Number(sliderOf(player).value));
}

/** What moves on the way to a step. @param {Element} step */
function movesTo(step) {
  /** @type {SVGGElement[]} */
  const moves = [];
  for (let each = step.previousElementSibling; each && !each.matches(".step"); each = each.previousElementSibling)
    moves.unshift(/** @type {SVGGElement} */ (each));
  return calm.matches ? [] : moves;
}

/** @param {Element} player @param {number} place from 0, the first step, to the last */
function show(player, place) {
  const svg = stageOf(player);
  const steps = stepsOf(svg);
  const share = place % 1;
  const before = Math.floor(place);
  const next = Math.ceil(place);
  const moves = movesTo(steps[next]);
  for (const each of svg.children) each.classList.remove("on");
  if (share && moves.length) {
    const part = Math.floor(share * moves.length);
    const on = share * moves.length - part;
    if (moves[part].matches(".turn")) turn(moves[part], steps[before], steps[next], on);
    else if (moves[part].matches(".bend")) bend(moves[part], on);
    else fold(moves[part], on, Number(svg.dataset.lift));
  } else {
    const step = steps[Math.round(place)];
    step.classList.add("on");
    step.setAttribute("transform", `translate(0 ${step.dataset.down})`);
  }
  tell(player, place);
}

/** Say where the drawing is. @param {Element} player @param {number} place */
function tell(player, place) {
  const steps = stepsOf(stageOf(player));
  const next = Math.ceil(place);
  const number = movesTo(steps[next]).length ? next : Math.round(place);
  const { name } = steps[number].dataset;
  const ahead = steps.filter(isAhead).length; // places that are no step
  const jumps = place % 1 && "jumps" in steps[next].dataset;
  const numbered = number < ahead ? name : `${number + 1 - ahead}. ${name}`;
  const told = `${numbered}${jumps ? ": not shown moving, one drawing follows the other" : ""}`;
  const now = /** @type {HTMLElement} */ (player.querySelector(".now"));
  if (now.textContent !== told) now.textContent = told;
  const spoken = number < ahead ? name : `${name}, step ${number + 1 - ahead} of ${steps.length - ahead}`;
  sliderOf(player).setAttribute("aria-valuetext", spoken ?? "");
  stageOf(player).setAttribute("aria-label", drawings(player)[number]?.getAttribute("aria-label") ?? name ?? "");
}

/** @param {Element} player @param {number} place */
function moveTo(player, place) {
  const slider = sliderOf(player);
  slider.step = "any";
  slider.value = String(place);
  /** @type {HTMLElement} */ (player.closest(".calculator")).dataset.played = String(place);
  show(player, place);
}

/** @param {Element} player */
function stop(player) {
  cancelAnimationFrame(running.get(player) ?? 0);
  running.delete(player);
  /** @type {HTMLElement} */ (player.querySelector("button")).textContent = "Play";
}

/**
 * Move the drawing on, frame by frame.
 * @param {Element} player @param {number} from @param {number} to a step @param {number} rest [ms] at every step
 */
function run(player, from, to, rest) {
  if (from === to) return moveTo(player, to);
  const steps = stepsOf(stageOf(player));
  const way = Math.sign(to - from);
  let place = from;
  let pause = 0;
  /** @type {number | undefined} */
  let last;
  /** @param {number} now */
  const frame = (now) => {
    const passed = Math.min(now - (last ?? now), 100);
    last = now;
    if (pause > 0) pause -= passed;
    else {
      const ahead = way > 0 ? Math.floor(place + 1) : Math.ceil(place - 1);
      const moves = movesTo(steps[way > 0 ? ahead : ahead + 1]).length;
      place += moves ? (way * passed) / (FOLD * moves) : way;
      if ((ahead - place) * way <= 0) {
        place = ahead;
        pause = rest && (moves ? rest : STILL);
      }
      moveTo(player, place);
    }
    if (!player.isConnected || (to - place) * way <= 0) return stop(player);
    running.set(player, requestAnimationFrame(frame));
  };
  running.set(player, requestAnimationFrame(frame));
}

document.addEventListener("click", ({ target }) => {
  const player = target.closest?.(".played");
  if (!player || !target.closest(".player button")) return;
  if (running.has(player)) return stop(player);
  const slider = sliderOf(player);
  const from = Number(slider.value) < Number(slider.max) ? Number(slider.value) : 0;
  run(player, from, Number(slider.max), REST);
  target.textContent = "Pause";
});

/** @param {EventTarget | null} target @returns {HTMLInputElement | null} */
const asSlider = (target) => (target instanceof HTMLInputElement && target.matches(".played input") ? target : null);

// A key goes from step to step, and the drawing follows; a finger goes anywhere between.
document.addEventListener("keydown", ({ target }) => {
  const slider = asSlider(target);
  if (slider) slider.step = "1";
});
document.addEventListener("pointerdown", ({ target }) => {
  const slider = asSlider(target);
  if (slider) slider.step = calm.matches ? "1" : "any";
});

document.addEventListener("input", ({ target }) => {
  const slider = asSlider(target);
  const player = slider?.closest(".played");
  if (!slider || !player) return;
  stop(player);
  const wanted = Number(slider.value);
  const from = Number(/** @type {HTMLElement} */ (player.closest(".calculator")).dataset.played ?? 0);
  if (slider.step === "1" && Math.abs(wanted - from) <= 1) run(player, from, wanted, 0);
  else moveTo(player, wanted);
});

document.addEventListener(
  "toggle",
  ({ target }) => {
    if (target instanceof HTMLDetailsElement && target.matches(".played")) target.open ? fill(target) : stop(target);
  },
  { capture: true },
);
