/**
 * What is printed of a page. Where something goes to the table (gauges, a cutting list, the steps of a corner)
 * print-sheets.css prints that alone; here are the two exceptions: one calculator's sheets, and the whole page.
 */

const ONLY_SHEETS = "only-sheets";
const WHOLE_PAGE = "whole-page";
const WANTED = "wanted"; // the calculator whose sheets they are

/** @param {HTMLElement} element @param {string} name */
function untilPrinted(element, name) {
  element.classList.add(name);
  addEventListener("afterprint", () => element.classList.remove(name), { once: true });
}

/**
 * Let the print that follows be of this calculator's sheets alone.
 * @param {HTMLElement} section
 */
export function onlySheetsOf(section) {
  untilPrinted(document.documentElement, ONLY_SHEETS);
  untilPrinted(section, WANTED);
}

document$.subscribe(({ body }) => {
  const page = body.querySelector(
    ".md-content__inner:not(:has(.walk)):has(.gauge-sheet, .listed, .in-order:not(details *))",
  );
  if (!page?.querySelector(".calculator")) return;
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = "Print the whole page";
  button.addEventListener("click", () => {
    untilPrinted(document.documentElement, WHOLE_PAGE);
    print();
  });
  const line = document.createElement("p");
  line.className = "print-whole";
  line.append(button);
  page.append(line);
});
