/**
 * The theme holds on to parts of every page that was left, and each part holds the whole page and all that listens in
 * it. So pages that were left some moves ago are taken apart; the last ones may still be putting down what was written.
 */

const PART = "[data-md-component=container]"; // what the theme puts another in place of
const STILL_WHOLE = 3; // pages

/** @type {Element[]} */
const pages = []; // the one that is shown is the last

document$.subscribe(({ body }) => {
  const now = body.querySelector(PART);
  if (now && now !== pages.at(-1)) pages.push(now);
  while (pages.length > 1 + STILL_WHOLE) takeApart(pages.shift());
});

/** @param {Element | undefined} page */
function takeApart(page) {
  if (!page || page.isConnected) return;
  for (const part of [page, ...page.querySelectorAll("*")]) part.replaceChildren();
}
