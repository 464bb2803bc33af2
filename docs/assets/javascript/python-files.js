/**
 * The files of the Python runtime, for the worker alone. Everything the runtime fetches passes through here: a file of the
 * bundle is checked against its hash, and nothing else is let through.
 */
export class RuntimeFiles {
  #arrived = 0;
  #fail;

  /** @param {(done: number, total: number) => void} onProgress bytes that have arrived */
  constructor(bundle, onProgress) {
    this.bundle = bundle;
    this.folder = new URL(bundle.folder, import.meta.url).href;
    this.onProgress = onProgress;
    /** Rejects as soon as any file fails, because Pyodide only logs that and then waits for ever. */
    this.failure = new Promise((_, reject) => (this.#fail = reject));
    this.failure.catch(() => {});
    this.byUrl = new Map(Object.values(bundle.files).map((file) => [this.folder + file.name, file]));
    this.network = self.fetch.bind(self);
    self.fetch = (url) => this.fetch(String(url));
  }

  url(role) {
    return this.folder + this.bundle.files[role].name;
  }

  async fetch(url) {
    const file = this.byUrl.get(url);
    try {
      if (!file) throw new Error(`${url} is not part of this runtime`);
      const response = await this.network(url, { integrity: file.integrity });
      if (!response.ok) throw new Error(`${file.name} could not be had (${response.status})`);
      this.#arrived += file.bytes;
      this.onProgress(this.#arrived, this.bundle.bytes);
      return response;
    } catch (error) {
      this.#fail(error);
      throw error;
    }
  }

  /** Imports cannot carry a hash in a worker: the fetch before checks it, the import then finds the same file in the cache. */
  async module(role) {
    await this.fetch(this.url(role));
    return import(this.url(role));
  }
}
