/** What is printed of a page: only what goes to the table, such as the sheets of a gauge or a cutting list. */

const ONLY_SHEETS = "only-sheets";
const WANTED = "wanted"; // the calculator whose sheets they are

/**
 * Let the print that follows be of this calculator's sheets alone.
 * @param {HTMLElement} section
 */
export function onlySheetsOf(section) {
  const [page, own] = [document.documentElement.classList, section.classList];
  page.add(ONLY_SHEETS);
  own.add(WANTED);
  const after = () => {
    page.remove(ONLY_SHEETS);
    own.remove(WANTED);
  };
  addEventListener("afterprint", after, { once: true });
}
