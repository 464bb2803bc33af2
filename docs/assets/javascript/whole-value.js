/**
 * Who comes to a blank finds its whole value selected, so that typing replaces it: by touch, by mouse, by keyboard. A second tap
 * places the cursor, as does a drag across some of the letters.
 */

const BLANK = "article input:not([type]), article input[type=text]";

let pressed = null; // the blank under the finger, if it was not the one in use when the finger came down

document.addEventListener("pointerdown", ({ target }) => (pressed = target !== document.activeElement && target.matches?.(BLANK) ? target : null), { capture: true });

document.addEventListener("focusin", ({ target }) => target !== pressed && target.matches(BLANK) && target.select());

/** The cursor is placed as the finger or button goes up: only after that does a selection stay. */
document.addEventListener("click", ({ target }) => {
  const isFirst = target === pressed && target === document.activeElement;
  pressed = null;
  if (isFirst && target.selectionStart === target.selectionEnd) target.select();
});

document.addEventListener("pointercancel", () => (pressed = null));
