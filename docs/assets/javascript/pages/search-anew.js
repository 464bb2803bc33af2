/** Who opens the search again writes over what she looked for last. */
document.addEventListener("focusin", ({ target }) => {
  if (target.matches(".md-search__input")) target.select();
});
