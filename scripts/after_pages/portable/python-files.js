/** The files of the runtime in the copy on a disk: asked of the page, which can load them where a worker cannot. */
const waiting = new Map(); // file name → [resolve, reject]

self.addEventListener("message", (event) => {
  const { name, content, problem } = event.data;
  if (!waiting.has(name)) return;
  event.stopImmediatePropagation();
  const [resolve, reject] = waiting.get(name);
  problem ? reject(new Error(problem)) : resolve(content);
});

export class RuntimeFiles {
  #contents = new Map();
  #imported = new Map();
  #onArrival;
  #fail;

  constructor(bundle, _kept, onArrival) {
    this.folder = "handbook:///";
    this.nothing = `${this.folder}nothing`;
    this.files = bundle.files;
    this.#onArrival = onArrival;
    self.fetch = (url) => this.fetch(String(url));
  }

  failure() {
    const failure = new Promise((_, reject) => (this.#fail = reject));
    failure.catch(() => {});
    return failure;
  }

  url(role) {
    return this.folder + this.files[role].name;
  }

  startFetching(...roles) {
    for (const role of roles) this.#content(this.files[role].name).catch(() => {});
  }

  /** Here nothing is gained by compiling before Pyodide does. */
  async startCompiling(role) {
    await this.#content(this.files[role].name);
  }

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

  async module(role) {
    const name = this.files[role].name;
    if (!this.#imported.has(name))
      this.#imported.set(name, await import(self.handbookAddress(await this.#content(name))));
    return this.#imported.get(name);
  }

  #content(name) {
    if (!this.#contents.has(name)) this.#contents.set(name, this.#asked(name));
    return this.#contents.get(name);
  }

  async #asked(name) {
    const content = await new Promise((resolve, reject) => {
      waiting.set(name, [resolve, reject]);
      self.postMessage({ need: name });
    });
    this.#onArrival(content.byteLength);
    return content;
  }
}
