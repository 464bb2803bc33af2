/** The files of the runtime in the copy on a disk: asked of the page, which can load them where a worker cannot. */

/**
 * @import { Bundle } from "../../../docs/assets/javascript/python/runtime-bundle.js"
 * @import { Files } from "../../../docs/assets/javascript/python/python-start.js"
 */

/** @type {Map<string, [(content: ArrayBuffer) => void, (problem: Error) => void]>} */
const waiting = new Map(); // by the name of the file

addEventListener("message", (event) => {
  const { name, content, problem } = event.data;
  const asker = waiting.get(name);
  if (!asker) return;
  event.stopImmediatePropagation();
  const [resolve, reject] = asker;
  problem ? reject(new Error(problem)) : resolve(content);
});

/** @implements {Files} */
export class RuntimeFiles {
  /** @type {Map<string, Promise<ArrayBuffer>>} */
  #contents = new Map();
  /** @type {Map<string, any>} */
  #imported = new Map();
  #onArrival;
  /** @type {((problem: unknown) => void) | undefined} */
  #fail;

  /** @param {Bundle} bundle @param {boolean} _kept @param {(bytes: number) => void} onArrival */
  constructor(bundle, _kept, onArrival) {
    this.folder = "handbook:///";
    this.nothing = `${this.folder}nothing`;
    this.files = bundle.files;
    this.#onArrival = onArrival;
    self.fetch = (url) => this.fetch(String(url));
  }

  failure() {
    /** @type {Promise<never>} */
    const failure = new Promise((_, reject) => {
      this.#fail = reject;
    });
    failure.catch(() => {});
    return failure;
  }

  /** @param {string} role */
  url(role) {
    return this.folder + this.files[role].name;
  }

  /** @param {string[]} roles */
  startFetching(...roles) {
    for (const role of roles) this.#content(this.files[role].name).catch(() => {});
  }

  /**
   * Here nothing is gained by compiling before Pyodide does.
   * @param {string} role
   */
  async startCompiling(role) {
    await this.#content(this.files[role].name);
  }

  /** @param {string} url */
  async fetch(url) {
    if (url === this.nothing) return new Response(new Uint8Array());
    try {
      const name = url.slice(this.folder.length);
      return new Response(await this.#content(name), {
        headers: { "Content-Type": name.endsWith(".wasm") ? "application/wasm" : "" },
      });
    } catch (error) {
      this.#fail?.(error);
      throw error;
    }
  }

  /** @param {string} role */
  async module(role) {
    const name = this.files[role].name;
    if (!this.#imported.has(name)) this.#imported.set(name, await import(handbookAddress(await this.#content(name))));
    return this.#imported.get(name);
  }

  /** @param {string} name */
  #content(name) {
    const content = this.#contents.get(name) ?? this.#asked(name);
    this.#contents.set(name, content);
    return content;
  }

  /** @param {string} name */
  async #asked(name) {
    /** @type {ArrayBuffer} */
    const content = await new Promise((resolve, reject) => {
      waiting.set(name, [resolve, reject]);
      self.postMessage({ need: name });
    });
    this.#onArrival(content.byteLength);
    return content;
  }
}
