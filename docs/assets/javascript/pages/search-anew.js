/** Who opens the search again writes over what she looked for last. */
document.addEventListener("focusin", ({ target }) => {
  const words = /** @type {HTMLInputElement | null} */ (target.closest?.(".md-search__input") ?? null);
  words?.select();
});
