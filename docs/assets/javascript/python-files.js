/**
 * The files of the Python runtime, for the worker alone. Everything the runtime fetches passes through here: a file of the
 * bundle is checked against its hash, and nothing else is let through.
 */
const NOTHING = "nothing";

export class RuntimeFiles {
  #network = self.fetch.bind(self);
  #early = new Map();
  #onArrival;
  #fail;

  /**
   * @param {object} bundle the list of files the build made
   * @param {(bytes: number) => void} onArrival hears of every file that has arrived
   */
  constructor(bundle, onArrival) {
    this.files = bundle.files;
    this.folder = new URL(bundle.folder, import.meta.url).href;
    this.nothing = this.folder + NOTHING; // an address that answers with an empty file
    this.#onArrival = onArrival;
    this.byUrl = new Map(Object.values(bundle.files).map((file) => [this.folder + file.name, file]));
    self.fetch = (url) => this.fetch(String(url));
  }

  /** Rejects as soon as a file fails from now on, because Pyodide only logs that and then waits for ever. */
  failure() {
    const failure = new Promise((_, reject) => (this.#fail = reject));
    failure.catch(() => {});
    return failure;
  }

  url(role) {
    return this.folder + this.files[role].name;
  }

  /** Begin to fetch files that will be asked for in a moment. */
  startFetching(...roles) {
    for (const url of roles.map((role) => this.url(role))) {
      const response = this.#fetch(url);
      response.catch(() => {});
      this.#early.set(url, response);
    }
  }

  async fetch(url) {
    if (url === this.nothing) return new Response(new Uint8Array());
    const early = this.#early.get(url);
    this.#early.delete(url);
    try {
      return await (early ?? this.#fetch(url));
    } catch (error) {
      this.#fail?.(error);
      throw error;
    }
  }

  async #fetch(url) {
    const file = this.byUrl.get(url);
    if (!file) throw new Error(`${url} is not part of this runtime`);
    const response = await this.#network(url, { integrity: file.integrity });
    if (!response.ok) throw new Error(`${file.name} could not be had (${response.status})`);
    this.#onArrival(file.bytes);
    return response;
  }

  /** Imports cannot carry a hash in a worker: the fetch before checks it, the import then finds the same file in the cache. */
  async module(role) {
    await this.fetch(this.url(role));
    return import(this.url(role));
  }
}
