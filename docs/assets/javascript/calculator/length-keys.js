/**
 * Above the number keyboard of a phone, which has neither fraction stroke nor space nor unit, stands a row of keys with
 * what a length needs. It keeps to the lower edge of what is seen; who writes with a mouse and keys has no need of it.
 */

const LENGTH = "article input[data-keys=length]";
const FINEST = 16; // parts of an inch that have keys of their own
const ROOM = 8; // [CSS px] between a blank and the keys

const TOUCH = matchMedia("(pointer: coarse)");
const view = /** @type {VisualViewport} */ (window.visualViewport);

const row = Object.assign(document.createElement("div"), { className: "length-keys", hidden: true });
row.setAttribute("role", "toolbar");
row.setAttribute("aria-label", "Keys for lengths");
document.body.append(row);

/** @type {HTMLInputElement | null} */
let blank = null; // the one that the keys write into
let byTouch = TOUCH.matches;

addEventListener("pointerdown", ({ pointerType }) => (byTouch = pointerType !== "mouse"), { capture: true });

/** What the keys write, on the ruler in hand: a fraction for each mark of an inch, else what metric rulers need. */
function keys() {
  /** @type {HTMLSelectElement | null} */
  const choice = document.querySelector(".ruler-choice select");
  const [unit, step = ""] = (choice?.value ?? "").split(" ");
  if (unit !== "in") return ["cm", "mm", "m", " ", "/", "+", "in", "ft", "yd"];
  const parts = Math.min(FINEST, Number(step.split("/")[1] ?? 1));
  const fractions = [];
  for (let part = 2; part <= parts; part *= 2)
    for (let count = 1; count < part; count += 2) fractions.push(`${count}/${part}`);
  return [" ", "/", ...fractions, "in", "ft", "yd", "+", "cm"];
}

/** @param {string} text */
function key(text) {
  const made = Object.assign(document.createElement("button"), { type: "button", textContent: text, tabIndex: -1 });
  made.dataset.key = text;
  if (text === " ") made.textContent = "space";
  if (text === "/") made.setAttribute("aria-label", "fraction stroke");
  if (text === "+") made.setAttribute("aria-label", "plus");
  return made;
}

/** @param {HTMLInputElement} found */
function show(found) {
  blank = found;
  row.replaceChildren(...keys().map(key));
  row.hidden = false;
  row.scrollLeft = 0;
  place();
}

function hide() {
  blank = null;
  row.hidden = true;
}

/** At the lower edge of what is seen, which ends above the keyboard; the blank is not under it. */
function place() {
  if (!blank) return;
  row.style.width = `${view.width}px`;
  const top = view.offsetTop + view.height - row.offsetHeight;
  row.style.transform = `translate(${view.offsetLeft}px, ${top}px)`;
  const under = blank.getBoundingClientRect().bottom + ROOM - top;
  if (under > 0) scrollBy({ top: under, behavior: "instant" });
}

/** Write where the cursor is; a fraction or a unit stands apart from the number before it. @param {string} text */
function write(text) {
  if (!blank) return;
  if (document.activeElement !== blank) blank.focus();
  const before = blank.value.slice(0, blank.selectionStart ?? 0);
  const isApart = /\d$/.test(before) && /\w/.test(text);
  document.execCommand("insertText", false, isApart ? ` ${text}` : text); // as typed: heard, kept and undone as such
}

row.addEventListener("mousedown", (event) => event.preventDefault()); // the blank stays in use
row.addEventListener("click", ({ target }) => {
  const { key: text } = /** @type {HTMLElement} */ (target).dataset;
  if (text) write(text);
});

document.addEventListener("focusin", ({ target }) => {
  if (row.contains(target)) return;
  if (byTouch && target.matches(LENGTH)) show(/** @type {HTMLInputElement} */ (target));
  else hide();
});
document.addEventListener("focusout", ({ relatedTarget }) => {
  if (!(relatedTarget instanceof Node && row.contains(relatedTarget))) hide();
});
for (const moved of ["resize", "scroll"]) view.addEventListener(moved, place);
document$.subscribe(hide);
