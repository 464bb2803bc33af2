/**
 * Drawings that can be enlarged, and whose pieces can be pointed at. Python drew them and wrote the words; this shows
 * them.
 */
import { onlySheetsOf } from "../printing/only-sheets.js";

/**
 * Which way a key leads: to the right, down.
 * @type {Record<string, [number, number]>}
 */
const WAYS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

/**
 * Make the drawing in an answer live.
 * @param {HTMLElement} answer the answer, whether it stands in the page yet or not
 * @param {HTMLElement} section the calculator it belongs to, which keeps the size
 */
export function dressDrawing(answer, section) {
  offerSheets(answer);
  const figure = answer.querySelector("figure.drawing:has(.frame)");
  if (!figure) return;
  for (const svg of figure.querySelectorAll(".frame > svg")) {
    svg.setAttribute("role", "group");
    piecesOf(svg).forEach((piece, index) => {
      piece.setAttribute("role", "button");
      piece.setAttribute("aria-pressed", "false");
      piece.setAttribute("aria-label", piece.dataset.words ?? "");
      piece.setAttribute("tabindex", index ? "-1" : "0");
    });
  }
  for (const each of figure.querySelectorAll(".sizes, .told")) each.hidden = false;
  show(section, figure, section.dataset.size ?? "1");
}

/** @param {HTMLElement} answer */
function offerSheets(answer) {
  for (const { parentElement: line } of answer.querySelectorAll("button.sheets")) if (line) line.hidden = false;
}

/** @param {Element} element @returns {HTMLElement[]} */
const piecesOf = (element) => [...element.querySelectorAll(".pointed-at")];

/**
 * The size is kept on the section, so that it outlives the answer.
 * @param {HTMLElement} section @param {HTMLElement} figure @param {string} size
 */
function show(section, figure, size) {
  section.dataset.size = size;
  for (const button of figure.querySelectorAll(".sizes button"))
    button.setAttribute("aria-pressed", String(button.dataset.size === size));
}

/** @param {HTMLElement} piece */
function point(piece) {
  for (const each of piecesOf(piece.closest("svg"))) {
    each.setAttribute("aria-pressed", String(each === piece));
    each.setAttribute("tabindex", each === piece ? "0" : "-1");
  }
  piece.closest("figure").querySelector(".told").textContent = piece.dataset.words ?? "";
}

/**
 * Change an answer; who points at a piece of its drawing then points at the same place in the new one, and is told of
 * that.
 * @param {HTMLElement} answer @param {() => void} change
 */
export function changeUnder(answer, change) {
  const focused = /** @type {HTMLElement | null} */ (document.activeElement);
  const svg = answer.contains(focused) && focused?.closest(".frame > svg");
  const at = svg && focused ? piecesOf(svg).indexOf(focused) : -1;
  change();
  const pieces =
    at < 0
      ? []
      : piecesOf([...answer.querySelectorAll(".frame > svg")].find((each) => each.checkVisibility()) ?? answer);
  const piece = pieces[at] ?? pieces.at(-1);
  piece?.focus({ preventScroll: true });
  if (piece) point(piece);
}

/**
 * The nearest piece that way: how far it lies that way counts once, how far beside three times.
 * @param {HTMLElement} piece @param {[right: number, down: number]} way
 */
function neighbour(piece, [right, down]) {
  /** @param {HTMLElement} each */
  const middle = (each) => {
    const { x, y, width, height } = each.getBoundingClientRect();
    return [x + width / 2, y + height / 2];
  };
  const [fromX, fromY] = middle(piece);
  /** @type {HTMLElement | null} */
  let best = null;
  let least = Infinity;
  for (const each of piecesOf(piece.closest("svg"))) {
    const [x, y] = middle(each);
    const onward = (x - fromX) * right + (y - fromY) * down;
    const far = onward + 3 * Math.abs((x - fromX) * down + (y - fromY) * right);
    if (onward > 1 && far < least) [best, least] = [each, far];
  }
  return best;
}

document.addEventListener("click", ({ target }) => {
  const piece = target.closest?.(".calculator .pointed-at");
  piece?.focus({ preventScroll: true });
  const size = target.closest?.(".sizes button");
  if (size) show(size.closest(".calculator"), size.closest("figure"), size.dataset.size ?? "1");
  if (!target.closest?.(".calculator button.sheets")) return;
  onlySheetsOf(target.closest(".calculator"));
  print();
});

document.addEventListener("focusin", ({ target }) => target.matches?.(".calculator .pointed-at") && point(target));

document.addEventListener("keydown", (event) => {
  const way = WAYS[event.key];
  if (!way || !event.target.matches?.(".calculator .pointed-at")) return;
  event.preventDefault();
  neighbour(event.target, way)?.focus();
});
