/**
 * A part that was found by the search is in view once the search has closed: on a phone the theme goes back to where
 * the page before it stood. There it stays while answers come in above it, until the reader does something.
 */
const COMING_IN = 10_000; // [ms] after which no answer is awaited any more
const LOCKED = "data-md-scrolllock"; // the theme's, while its search lies over the page

document.addEventListener("click", ({ target }) => {
  const link = /** @type {HTMLAnchorElement | null} */ (target.closest?.("a.md-search-result__link") ?? null);
  const hash = link?.hash;
  if (!hash) return;
  const closed = new MutationObserver(() => {
    if (document.body.hasAttribute(LOCKED)) return;
    closed.disconnect();
    const part = location.hash === hash && document.getElementById(decodeURIComponent(hash.slice(1)));
    if (part) keepInView(part);
  });
  closed.observe(document.body, { attributeFilter: [LOCKED] });
});

/** @param {HTMLElement} part */
function keepInView(part) {
  part.scrollIntoView();
  const moved = new ResizeObserver(() => part.scrollIntoView());
  moved.observe(document.body);
  const leave = new AbortController();
  const stop = () => {
    moved.disconnect();
    leave.abort();
  };
  for (const act of ["wheel", "touchstart", "pointerdown", "keydown"])
    addEventListener(act, stop, { signal: leave.signal, passive: true });
  setTimeout(stop, COMING_IN);
}
