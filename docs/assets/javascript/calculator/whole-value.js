/**
 * Who comes to a blank finds its whole value selected, so that typing replaces it: by touch, by mouse, by keyboard. A
 * second tap places the cursor, as does a drag across some of the letters. Where a button or Enter led her to the
 * blank, the first tap is still the first.
 */
import { blankIn } from "./blanks.js";

/** @type {HTMLInputElement | null} */
let pressed = null; // the blank under the finger, if she had not come to it before the finger came down
/** @type {HTMLInputElement | null} */
let again = null; // the blank she is in, under the finger, its whole value selected as the finger came down
/** @type {HTMLInputElement | null} */
let reached = null; // the blank in use, if she came to it herself
let byKey = false; // whether she last pressed a key that goes where she wants: Enter leads her, as a button does

document.addEventListener("keydown", ({ key }) => (byKey = key !== "Enter"), { capture: true });

document.addEventListener(
  "pointerdown",
  ({ target }) => {
    byKey = false;
    const blank = blankIn(target);
    const isInUse = target === document.activeElement && (target === reached || !blank || !isWhole(blank));
    [pressed, again] = isInUse ? [null, blank && isWhole(blank) ? blank : null] : [blank, null];
  },
  { capture: true },
);

document.addEventListener("focusin", ({ target }) => {
  if (target === pressed) return;
  const blank = blankIn(target);
  reached = byKey ? blank : null;
  blank?.select();
});

document.addEventListener("focusout", () => (reached = null));

/**
 * The cursor is placed as the finger or button goes up: only after that does a selection stay. By then the blank may
 * have moved away from under the finger, since the one that she left is wider with its unit written.
 */
document.addEventListener("click", ({ target, clientX, clientY }) => {
  const first = pressed === document.activeElement ? pressed : null;
  const second = again && target === again && isWhole(again) ? again : null;
  pressed = again = null;
  if (first) reached = first;
  if (first && first.selectionStart === first.selectionEnd) first.select();
  if (!second) return; // a mouse has placed the cursor; a finger has not
  const { offsetNode, offset } = document.caretPositionFromPoint?.(clientX, clientY) ?? {};
  const at = offsetNode === second && offset !== undefined ? offset : second.value.length;
  second.setSelectionRange(at, at);
});

document.addEventListener("pointercancel", () => (pressed = again = null));

/** @param {HTMLInputElement} blank */
const isWhole = (blank) =>
  blank.value !== "" && blank.selectionStart === 0 && blank.selectionEnd === blank.value.length;
