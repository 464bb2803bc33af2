/** Paper has no line to tap: what is folded is open while a page is printed, also what an answer has brought since. */

/** @type {HTMLDetailsElement[]} */
let opened = [];

addEventListener("beforeprint", () => {
  /** @type {NodeListOf<HTMLDetailsElement>} */
  const shut = document.querySelectorAll(".md-content details:not([open])");
  opened = [...shut];
  for (const fold of opened) fold.open = true;
});

addEventListener("afterprint", () => {
  for (const fold of opened) fold.open = false;
  opened = [];
});
