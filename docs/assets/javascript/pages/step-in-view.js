/**
 * Where the window is wide, the step that is read shows its drawing, with its number, at the left over the answer's
 * own; back at the answer, that shows again. Only for the eye: nothing of it is read out, and nothing moves.
 */

const SHOWN = "step-in-view";
const LINE = 0.4; // of the window's height: the step that crosses it is the one that is read
const wide = matchMedia("(min-width: 68.75em)");

/** @type {HTMLElement | null | undefined} */
let page; // the page's two parts, where it has steps
let isDue = false;

/** @returns {HTMLElement | null | undefined} */
const answersDrawing = () => page?.querySelector(".kept-in-view .answer > figure.drawing");

/** @param {Element} step */
function drawn(step) {
  const figure = document.createElement("div");
  figure.className = SHOWN;
  figure.setAttribute("aria-hidden", "true");
  const words = document.createElement("p");
  const number = [...(step.parentElement?.children ?? [])].indexOf(step) + 1;
  words.textContent = `${number} ${step.querySelector(".do")?.textContent ?? ""}`;
  figure.append(words);
  const svg = step.querySelector("svg")?.cloneNode(true);
  if (svg instanceof SVGElement) {
    svg.setAttribute("preserveAspectRatio", "xMidYMin");
    svg.setAttribute("viewBox", svg.dataset.whole ?? svg.getAttribute("viewBox") ?? "");
    figure.append(svg);
  }
  return figure;
}

/** The step that crosses the line, or that is in use. @param {Element | null} [inUse] */
function stepRead(inUse) {
  const steps = [...(page?.querySelectorAll(".beside .in-order > ol > li") ?? [])];
  if (inUse?.closest(".kept-in-view")) return undefined;
  const used = inUse?.closest(".in-order > ol > li");
  if (used) return used;
  const line = innerHeight * LINE;
  return steps.find((step) => {
    const { top, bottom } = step.getBoundingClientRect();
    return top <= line && line < bottom;
  });
}

/** @param {Element | null} [inUse] */
function show(inUse) {
  const figure = answersDrawing();
  const before = figure?.querySelector(`.${SHOWN}`);
  const step = wide.matches ? stepRead(inUse) : undefined;
  if (!figure || !step) return before?.remove();
  const next = drawn(step);
  if (before?.isEqualNode(next)) return;
  if (before) before.replaceWith(next);
  else figure.append(next);
}

function soon() {
  if (!page || isDue) return;
  isDue = true;
  requestAnimationFrame(() => {
    isDue = false;
    show();
  });
}

addEventListener("scroll", soon, { passive: true });
wide.addEventListener("change", soon);
document.addEventListener("focusin", ({ target }) => page && show(target));

document$.subscribe(({ body }) => {
  page = body.querySelector(".two:has(.in-order)");
  soon();
});
