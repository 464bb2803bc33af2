/**
 * When Python starts: never before the page can be read; then by itself where the page has something to work out; on a
 * connection that is paid by the megabyte, or asks to be spared, only when the reader touches a calculator.
 */
import { wake } from "./python.js";

const LIVE = ".calculator, [data-number], [data-value], [data-figure]";

/** Whether the reader's connection should be spared. */
export function isSpared() {
  const { saveData, type, effectiveType = "" } = navigator.connection ?? {};
  return Boolean(saveData) || type === "cellular" || effectiveType.endsWith("2g") || matchMedia("(prefers-reduced-data: reduce)").matches;
}

/** Resolves when the page has been drawn and the browser has a moment to spare. */
export async function readable() {
  if (document.readyState !== "complete") await new Promise((resolve) => addEventListener("load", resolve, { once: true }));
  await new Promise((resolve) => (self.requestIdleCallback ?? setTimeout)(resolve, { timeout: 500 }));
}

const isLive = (element) => Boolean(element?.closest?.(".calculator"));
for (const touch of ["focusin", "pointerdown"]) {
  document.addEventListener(touch, ({ target }) => isLive(target) && wake(), { passive: true });
}

document$.subscribe(async ({ body }) => {
  if (!body.querySelector(LIVE) || isSpared()) return;
  await readable();
  wake();
});
