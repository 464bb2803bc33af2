/**
 * Enter in a blank goes to the next one of the same calculator, table or step; in the last it stays, and the answer is
 * brought into view. The phone's keyboard says which of the two its key does.
 */
import { BLANK, blankIn } from "./blanks.js";

/** What belongs together: who is through with one blank goes on to the next of these. */
const TOGETHER = "form, details.line, section.house, .sizes, .tools > .settle, .jobs, .in-hand";

/**
 * @param {HTMLInputElement} blank
 * @returns {HTMLInputElement | undefined} the next one that can be seen, and so is not behind a fold
 */
function nextTo(blank) {
  /** @type {NodeListOf<HTMLInputElement>} */
  const all = blank.closest(TOGETHER).querySelectorAll(BLANK);
  const later = [...all].slice([...all].indexOf(blank) + 1);
  return later.find((each) => !each.disabled && each.checkVisibility());
}

/** @param {HTMLElement} element */
const served = (element) => {
  const blank = blankIn(element);
  return blank?.closest(TOGETHER) ? blank : null;
};

document.addEventListener("focusin", ({ target }) => {
  const blank = served(target);
  if (blank) blank.enterKeyHint = nextTo(blank) ? "next" : "done";
});

document.addEventListener("keydown", (event) => {
  if (event.key !== "Enter" || event.isComposing || event.ctrlKey || event.altKey || event.metaKey || event.shiftKey)
    return;
  const blank = served(event.target);
  if (!blank) return;
  const next = nextTo(blank);
  if (!next) {
    blank.closest(".calculator")?.querySelector(".answer > .spoken")?.scrollIntoView({ block: "nearest" });
    return; // the browser then tells of the change, as it does when a blank is left
  }
  event.preventDefault();
  next.focus();
});

// the browser would send a form of one blank; what a form asks is answered as it is typed
document.addEventListener("submit", (event) => event.target.matches("article form") && event.preventDefault());
