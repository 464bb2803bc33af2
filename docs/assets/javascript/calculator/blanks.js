/** The blanks of a page in which one line is written. */
export const BLANK = "article input:not([type]), article input[type=text]";

/** @param {HTMLElement} element @returns {HTMLInputElement | null} */
export const blankIn = (element) => /** @type {HTMLInputElement | null} */ (element.matches?.(BLANK) ? element : null);
