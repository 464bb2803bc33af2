/**
 * When Python starts: never before the page can be read; then by itself where the page has something to work out; on a
 * connection that is paid by the megabyte, or asks to be spared, only when the reader touches a calculator. On the
 * first page of a visit `at-first-paint.js` comes before this.
 */
import "./at-first-paint.js";
import { wake } from "./python.js";

export const { isSpared, hasWork } = atFirstPaint;

/** Resolves when the page has been drawn and the browser has a moment to spare. */
export async function readable() {
  if (document.readyState !== "complete")
    await new Promise((resolve) => addEventListener("load", resolve, { once: true }));
  await new Promise((resolve) => (self.requestIdleCallback ?? setTimeout)(resolve, { timeout: 500 }));
}

/** @param {HTMLElement} element */
const isLive = (element) => Boolean(element?.closest?.(".calculator"));
for (const touch of ["focusin", "pointerdown"]) {
  document.addEventListener(
    /** @type {"focusin" | "pointerdown"} */ (touch),
    ({ target }) => isLive(target) && wake(),
    { passive: true },
  );
}

document$.subscribe(async ({ body }) => {
  if (!hasWork(body) || isSpared()) return;
  await readable();
  wake();
});

if (atFirstPaint.worker) wake();
