/**
 * Starts Python's worker as soon as the page has been drawn and can be read, while the page's other scripts are still
 * being read. Not a module, since modules wait for one another; `python.js` takes the worker over. Where this script
 * did not arrive in time, `when-to-wake.js` brings its rules along, and no more.
 */
if (!globalThis.atFirstPaint) {
  const { src = "" } = /** @type {HTMLScriptElement} */ (document.currentScript ?? {});

  /** Whether the reader's connection should be spared. */
  function isSpared() {
    const { saveData, type, effectiveType = "" } = navigator.connection ?? {};
    return (
      Boolean(saveData) ||
      type === "cellular" ||
      effectiveType.endsWith("2g") ||
      matchMedia("(prefers-reduced-data: reduce)").matches
    );
  }

  /** @param {ParentNode} page */
  const hasWork = (page) => page.querySelector(".calculator, [data-number], [data-value], [data-figure]") !== null;

  /** The style sheets that came to nothing; what is on a disk tells no script what it came to. */
  function unstyled() {
    if (location.protocol === "file:") return [];
    const links = /** @type {NodeListOf<HTMLLinkElement>} */ (document.querySelectorAll("link[rel=stylesheet]"));
    return [...links].filter(({ sheet }) => !sheet?.cssRules.length);
  }

  /** @type {typeof atFirstPaint} */
  const early = { isSpared, hasWork, unstyled, worker: null, heard: [], refused: [] };
  globalThis.atFirstPaint = early;

  // Where a host calls scripts or styles something else, browsers refuse them: they are then taken as texts.
  let asText = false;
  function bringAsText() {
    if (asText || !src || location.protocol === "file:") return;
    asText = true;
    document.head.append(Object.assign(document.createElement("script"), { src: new URL("./as-text.js", src).href }));
  }
  document.addEventListener(
    "error",
    ({ target }) => {
      if (!(target instanceof HTMLScriptElement) || target.type !== "module") return;
      early.refused.push(target.src);
      bringAsText();
    },
    { capture: true },
  );
  document.addEventListener("DOMContentLoaded", () => early.unstyled().length && bringAsText());

  function start() {
    if (early.refused.length) return;
    const worker = new Worker(new URL("./python-worker.js", src), { type: "module", name: "python" });
    early.worker = worker;
    worker.onmessage = worker.onerror = (/** @type {MessageEvent | ErrorEvent} */ event) => early.heard.push(event);
    const kept = Boolean(navigator.serviceWorker?.controller);
    worker.postMessage(/** @satisfies {import("./messages.js").Wake} */ ({ type: "wake", way: "snapshot", kept }));
  }

  // What stands in the page when a picture of it is about to be drawn can be read in the task after that.
  requestAnimationFrame(function drawing() {
    if (!src || document.readyState === "complete" || isSpared()) return; // from here on `when-to-wake.js` decides
    if (!hasWork(document)) {
      requestAnimationFrame(drawing);
      return;
    }
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = start;
    port2.postMessage(null);
  });
}
