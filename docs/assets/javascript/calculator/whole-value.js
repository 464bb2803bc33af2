/**
 * Who comes to a blank finds its whole value selected, so that typing replaces it: by touch, by mouse, by keyboard. A
 * second tap places the cursor, as does a drag across some of the letters.
 */

const BLANK = "article input:not([type]), article input[type=text]";

/** @type {HTMLInputElement | null} */
let pressed = null; // the blank under the finger, if it was not the one in use when the finger came down
/** @type {HTMLInputElement | null} */
let again = null; // the blank in use under the finger, its whole value selected as the finger came down

document.addEventListener(
  "pointerdown",
  ({ target }) => {
    const blank = blankIn(target);
    [pressed, again] =
      target === document.activeElement ? [null, blank && isWhole(blank) ? blank : null] : [blank, null];
  },
  { capture: true },
);

document.addEventListener("focusin", ({ target }) => target !== pressed && blankIn(target)?.select());

/** The cursor is placed as the finger or button goes up: only after that does a selection stay. */
document.addEventListener("click", ({ target, clientX, clientY }) => {
  const first = target === pressed && target === document.activeElement ? pressed : null;
  const second = again && target === again && isWhole(again) ? again : null;
  pressed = again = null;
  if (first && first.selectionStart === first.selectionEnd) first.select();
  if (!second) return; // a mouse has placed the cursor; a finger has not
  const { offsetNode, offset } = document.caretPositionFromPoint?.(clientX, clientY) ?? {};
  const at = offsetNode === second && offset !== undefined ? offset : second.value.length;
  second.setSelectionRange(at, at);
});

document.addEventListener("pointercancel", () => (pressed = again = null));

/** @param {HTMLElement} element @returns {HTMLInputElement | null} */
const blankIn = (element) => /** @type {HTMLInputElement | null} */ (element.matches?.(BLANK) ? element : null);

/** @param {HTMLInputElement} blank */
const isWhole = (blank) =>
  blank.value !== "" && blank.selectionStart === 0 && blank.selectionEnd === blank.value.length;
