// Makes the handbook work from a folder on a disk, where browsers load neither modules nor workers by their address:
// both are handed over as text instead. The build fills in HANDBOOK: { modules, entries, searchWorker, workerStart }.
{
  const HERE = /** @type {HTMLScriptElement} */ (document.currentScript).src;
  /** @param {string} text */
  const address = (text) => URL.createObjectURL(new Blob([text], { type: "text/javascript" }));
  const assemble = assembler(HANDBOOK.modules, new URL("../javascript/", HERE).href, address);

  /** @type {Map<string, (base64: string) => void>} */
  const arrivals = new Map(); // by the name of the file
  window.handbookFile = (name, base64) => arrivals.get(name)?.(base64);

  /** @param {string} name @returns {Promise<ArrayBuffer>} */
  function file(name) {
    return new Promise((resolve, reject) => {
      const script = document.createElement("script");
      arrivals.set(name, (base64) => resolve(unpacked(base64)));
      script.onerror = () => reject(new Error(`${name} is missing in this copy`));
      script.src = new URL(`${name}.js`, HERE).href;
      document.head.append(script);
      script.onload = () => script.remove();
    });
  }

  /** @param {string} base64 */
  async function unpacked(base64) {
    const text = atob(base64);
    const packed = Uint8Array.from({ length: text.length }, (_, index) => text.charCodeAt(index));
    return new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"))).arrayBuffer();
  }

  window.Worker = class extends Worker {
    /** @param {string | URL} url */
    constructor(url) {
      const forPython = String(url).endsWith("python-worker.js");
      const own = HANDBOOK.modules[String(url).split("/").pop() ?? ""];
      super(address(forPython ? HANDBOOK.workerStart : (own ?? HANDBOOK.searchWorker)));
      if (forPython) this.addEventListener("message", ({ data }) => data.need && this.#hand(data.need));
    }

    /** @param {string} name */
    async #hand(name) {
      try {
        const content = await file(name);
        this.postMessage({ name, content }, [content]);
      } catch (problem) {
        this.postMessage({ name, problem: problem.message });
      }
    }
  };

  // A folder on a disk does not open its index by itself.
  document.addEventListener(
    "click",
    ({ target }) => {
      const link = target instanceof Element && target.closest("a");
      if (link && link.protocol === "file:" && link.pathname.endsWith("/")) link.pathname += "index.html";
    },
    { capture: true },
  );

  document.addEventListener("DOMContentLoaded", () => HANDBOOK.entries.forEach((name) => import(assemble(name))));
}
