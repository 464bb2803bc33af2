/**
 * Scripts that only one kind of page needs: each is fetched when such a page is first in view, and then follows the
 * pages itself.
 */
const SCRIPTS = {
  ".house-method": () => import("./method-page.js"),
  ".jobs-page": () => import("./jobs-page.js"),
  ".kept": () => import("./handing-page.js"),
  ".where-kept": () => import("./where-kept-page.js"),
  ".go-on": () => import("./go-on.js"),
  ".ticket": () => import("./ticket-page.js"),
};

document$.subscribe(({ body }) => {
  for (const [sign, script] of Object.entries(SCRIPTS)) if (body.querySelector(sign)) script();
});
