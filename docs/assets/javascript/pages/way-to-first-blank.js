/** The way past the head of a page leads into its first blank, out of a fold if it lies in one. */
import { unfold } from "../calculator/unfold.js";

document.addEventListener(
  "click",
  (event) => {
    const way = /** @type {HTMLAnchorElement | null} */ (event.target?.closest?.("a.md-skip") ?? null);
    const blank = way && document.getElementById(way.hash.slice(1));
    if (!blank?.matches("input, select, textarea")) return;
    event.preventDefault();
    event.stopPropagation(); // else the theme goes there, and leaves the keyboard where it was
    unfold(blank);
    blank.focus();
  },
  { capture: true },
);
