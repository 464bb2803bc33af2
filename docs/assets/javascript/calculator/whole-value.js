/**
 * Who comes to a blank finds its whole value selected, so that typing replaces it: by touch, by mouse, by keyboard. A
 * second tap places the cursor, as does a drag across some of the letters.
 */

const BLANK = "article input:not([type]), article input[type=text]";

let pressed = null; // the blank under the finger, if it was not the one in use when the finger came down
let again = null; // the blank in use under the finger, its whole value selected as the finger came down

document.addEventListener(
  "pointerdown",
  ({ target }) => {
    const blank = target.matches?.(BLANK) ? target : null;
    [pressed, again] =
      target === document.activeElement ? [null, blank && isWhole(blank) ? blank : null] : [blank, null];
  },
  { capture: true },
);

document.addEventListener("focusin", ({ target }) => target !== pressed && target.matches(BLANK) && target.select());

/** The cursor is placed as the finger or button goes up: only after that does a selection stay. */
document.addEventListener("click", ({ target, clientX, clientY }) => {
  const isFirst = target === pressed && target === document.activeElement;
  const isSecond = target === again && isWhole(target);
  pressed = again = null;
  if (isFirst && target.selectionStart === target.selectionEnd) target.select();
  if (!isSecond) return; // a mouse has placed the cursor; a finger has not
  const { offsetNode, offset } = document.caretPositionFromPoint?.(clientX, clientY) ?? {};
  const at = offsetNode === target ? offset : target.value.length;
  target.setSelectionRange(at, at);
});

document.addEventListener("pointercancel", () => (pressed = again = null));

const isWhole = (blank) =>
  blank.value !== "" && blank.selectionStart === 0 && blank.selectionEnd === blank.value.length;
