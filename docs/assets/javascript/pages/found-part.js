/**
 * A part that was found by the search is in view once the search has closed: on a phone the theme goes back to where
 * the page before it stood.
 */
const LOCKED = "data-md-scrolllock"; // the theme's, while its search lies over the page

document.addEventListener("click", ({ target }) => {
  const link = /** @type {HTMLAnchorElement | null} */ (target.closest?.("a.md-search-result__link") ?? null);
  const hash = link?.hash;
  if (!hash) return;
  const closed = new MutationObserver(() => {
    if (document.body.hasAttribute(LOCKED)) return;
    closed.disconnect();
    if (location.hash === hash) document.getElementById(decodeURIComponent(hash.slice(1)))?.scrollIntoView();
  });
  closed.observe(document.body, { attributeFilter: [LOCKED] });
});
