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

/** What keeps the place that is shown, since it outlives the drawing. */
const KEEPS = ".calculator, [data-figure]";

/**
 * Let steps be played. The place is kept on what they belong to. Two beside each other begin where they
 * can last be told apart; what is opened to see it made, at its first step.
 * @param {HTMLElement} drawn an answer or a figure, whether it stands in the page yet or not
 * @param {HTMLElement} keeper the calculator or the figure it belongs to
 */
export function dressPlayed(drawn, keeper) {
  const player = /** @type {HTMLElement | null} */ (drawn.querySelector(".played"));
  if (!player) return;
  player.hidden = false;
  const slider = sliderOf(player);
  keeper.dataset.played ??= player.dataset.begins ?? "0";
  slider.value = String(Math.min(Math.round(Number(keeper.dataset.played)), Number(slider.max)));
  slider.setAttribute("value", slider.value);
  if (!(player instanceof HTMLDetailsElement) || player.open) fill(player);
}

/** @param {Element} player */
const sliderOf = (player) => /** @type {HTMLInputElement} */ (player.querySelector("input"));
/**
 * The drawings that are played together: mostly one.
 * @param {Element} player @returns {SVGSVGElement[]}
 */
const stagesOf = (player) => [.../** @type {NodeListOf<SVGSVGElement>} */ (player.querySelectorAll(".stage > svg"))];
/** @param {Element} svg @returns {SVGGElement[]} */
const stepsOf = (svg) =>
  /** @type {SVGGElement[]} */ (/** @type {unknown} */ ([...svg.querySelectorAll(":scope > .step")]));

/** Whether a place comes before the first step. @param {SVGGElement} step */
const isAhead = (step) => "ahead" in step.dataset;

/**
 * At which of its steps a drawing stands at each place of the slider: where two are played together, one may wait.
 * @param {SVGSVGElement} svg
 */
const stopsOf = (svg) => svg.dataset.stops?.split(" ").map(Number) ?? stepsOf(svg).map((_, index) => index);

/**
 * The drawing of each step in the list, undefined where a place is no step, or has its own drawing on the stage.
 * @param {SVGSVGElement} svg @returns {(Element | undefined)[]}
 */
function drawings(svg) {
  const listed = svg.closest(".played")?.parentElement?.querySelectorAll(":scope > ol > li svg");
  const drawn = [...(listed ?? [])];
  return stepsOf(svg).map((step) => (isAhead(step) ? undefined : drawn.shift()));
}

/** Put each step's own drawing on the stage. @param {Element} player */
function fill(player) {
  for (const svg of stagesOf(player)) {
    const drawn = drawings(svg);
    stepsOf(svg).forEach((step, index) => {
      if (drawn[index] && !("drawn" in step.dataset)) step.replaceChildren(...drawn[index].cloneNode(true).childNodes);
    });
  }
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

/** @param {Element} player @param {number} place from 0, the first, to the last */
function show(player, place) {
  for (const svg of stagesOf(player)) {
    lay(svg, place);
    tell(svg, place);
  }
  sliderOf(player).setAttribute(
    "aria-valuetext",
    stagesOf(player)
      .map((svg) => svg.dataset.spoken)
      .join("; "),
  );
}

/** @param {SVGSVGElement} svg @param {number} place */
function lay(svg, place) {
  const steps = stepsOf(svg);
  const stops = stopsOf(svg);
  const [before, next] = [stops[Math.floor(place)], stops[Math.ceil(place)]];
  const share = place % 1;
  const moves = before === next ? [] : movesTo(steps[next]);
  for (const each of svg.children) each.classList.remove("on");
  if (share && moves.length) {
    const part = Math.floor(share * moves.length);
    const on = share * moves.length - part;
    if (moves[part].matches(".turn")) turn(moves[part], steps[before], steps[next], on);
    else if (moves[part].matches(".bend")) bend(moves[part], on);
    else fold(moves[part], on, Number(svg.dataset.lift));
  } else {
    const step = steps[stops[Math.round(place)]];
    step.classList.add("on");
    step.setAttribute("transform", `translate(0 ${step.dataset.down})`);
  }
}

/** Say where a drawing is. @param {SVGSVGElement} svg @param {number} place */
function tell(svg, place) {
  const steps = stepsOf(svg);
  const stops = stopsOf(svg);
  const next = Math.ceil(place);
  const at = movesTo(steps[stops[next]]).length ? next : Math.round(place);
  const number = stops[at];
  const { name, told: inWords } = steps[number].dataset;
  const ahead = steps.filter(isAhead).length; // places that are no step
  const waits = at > 0 && number === stops[at - 1];
  const jumps = place % 1 && !waits && "jumps" in steps[number].dataset;
  const numbered = number < ahead ? name : `${number + 1 - ahead}. ${name}`;
  const beside = waits ? ": waits" : jumps ? ": not shown moving, one drawing follows the other" : "";
  const half = svg.closest(".half");
  const now = /** @type {HTMLElement} */ ((half ?? svg.closest(".played"))?.querySelector(".now"));
  if (now.textContent !== numbered + beside) now.textContent = numbered + beside;
  now.classList.toggle("waits", waits);
  const made = half ? `${half.querySelector(".made")?.textContent}: ` : "";
  const counted = number < ahead ? name : `${name}, step ${number + 1 - ahead} of ${steps.length - ahead}`;
  svg.dataset.spoken = `${made}${counted}${waits ? ", waits" : ""}`;
  svg.setAttribute("aria-label", drawings(svg)[number]?.getAttribute("aria-label") ?? inWords ?? name ?? "");
}

/** @param {Element} player @param {number} place */
function moveTo(player, place) {
  const slider = sliderOf(player);
  slider.step = "any";
  slider.value = String(place);
  /** @type {HTMLElement} */ (player.closest(KEEPS)).dataset.played = String(place);
  show(player, place);
}

/** @param {Element} player */
function stop(player) {
  cancelAnimationFrame(running.get(player) ?? 0);
  running.delete(player);
  /** @type {HTMLElement} */ (player.querySelector("button")).textContent = "Play";
}

/**
 * How many folds there are on the way to a place, in the drawing that has most.
 * @param {Element} player @param {number} place
 */
const mostMoves = (player, place) =>
  Math.max(
    ...stagesOf(player).map((svg) => {
      const [before, stop] = stopsOf(svg).slice(place - 1, place + 1);
      return before === stop ? 0 : movesTo(stepsOf(svg)[stop]).length;
    }),
  );

/**
 * Move the drawing on, frame by frame.
 * @param {Element} player @param {number} from @param {number} to a step @param {number} rest [ms] at every step
 */
function run(player, from, to, rest) {
  if (from === to) return moveTo(player, to);
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
      const moves = mostMoves(player, way > 0 ? ahead : ahead + 1);
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
  const isFromTheFirst = [slider.max, player.dataset.begins].includes(slider.value);
  const from = isFromTheFirst ? 0 : Number(slider.value);
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
  const from = Number(/** @type {HTMLElement} */ (player.closest(KEEPS)).dataset.played ?? 0);
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
