/**
 * The files of the Python runtime, for the worker alone. Everything the runtime fetches passes through here: a file of
 * the bundle is checked against its hash, and nothing else is let through. What comes from the offline copy was checked
 * when it was put there; it is handed on untouched, since the browser keeps the compiled machine code of such files
 * only.
 */
import { SITE } from "../site.js";
import { hashOf } from "./hash.js";

/**
 * @import { Bundle, RuntimeFile } from "./runtime-bundle.js"
 * @import { Files } from "./python-start.js"
 */

const NOTHING = "nothing";
const MACHINE_CODE = "application/wasm";
const AS_IT_LIES = "default";
const AFRESH = "reload"; // past a cache that may hold half a file

const instantiateStreaming = WebAssembly.instantiateStreaming;
WebAssembly.instantiateStreaming = async (fetched, imports) => {
  const module = /** @type {Response | WebAssembly.Module} */ (await fetched);
  if (!(module instanceof WebAssembly.Module)) return instantiateStreaming(module, imports);
  return { module, instance: await WebAssembly.instantiate(module, imports) };
};

/** @implements {Files} */
export class RuntimeFiles {
  #network = self.fetch.bind(self);
  /** @type {Map<string, Promise<Response | WebAssembly.Module>>} */
  #early = new Map();
  /** @type {Map<string, any>} */
  #imported = new Map();
  #kept;
  #onArrival;
  /** @type {((problem: unknown) => void) | undefined} */
  #fail;

  /**
   * @param {Bundle} bundle the list of files the build made
   * @param {boolean} kept whether the files come from the offline copy
   * @param {(bytes: number) => void} onArrival hears of everything that has arrived
   */
  constructor(bundle, kept, onArrival) {
    this.files = bundle.files;
    this.folder = new URL(bundle.folder, SITE).href;
    this.nothing = this.folder + NOTHING; // an address that answers with an empty file
    this.#kept = kept;
    this.#onArrival = onArrival;
    /** @type {Map<string, RuntimeFile>} */
    this.byUrl = new Map(Object.values(bundle.files).map((file) => [this.folder + file.name, file]));
    // A machine that is compiled already goes by the same way as a file.
    self.fetch = (url) => /** @type {Promise<Response>} */ (this.fetch(String(url)));
  }

  /** Rejects as soon as a file fails from now on, because Pyodide only logs that and then waits for ever. */
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

  /**
   * Begin to fetch files that will be asked for in a moment.
   * @param {string[]} roles
   */
  startFetching(...roles) {
    for (const url of roles.map((role) => this.url(role))) {
      const response = this.#fetch(url);
      response.catch(() => {});
      this.#early.set(url, response);
    }
  }

  /**
   * Begin to compile the machine while it arrives. Pyodide is handed the code where it would be handed the file.
   * @param {string} role
   * @returns {Promise<void>} resolves when all of it has arrived; the compiling goes on beside this thread
   */
  startCompiling(role) {
    const url = this.url(role);
    return new Promise((resolve, reject) => {
      const code = this.#compiled(url, this.files[role], resolve);
      code.catch(reject);
      this.#early.set(url, code);
    });
  }

  /** @param {string} url */
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

  /** @param {string} url */
  async #fetch(url) {
    const file = this.byUrl.get(url);
    if (!file) throw new Error(`${url} is not part of this runtime`);
    if (this.#kept) return this.#answered(url, file, AS_IT_LIES);
    try {
      return await this.#checked(url, file, AS_IT_LIES);
    } catch {
      return this.#checked(url, file, AFRESH);
    }
  }

  /** @param {string} url @param {RuntimeFile} file @param {() => void} onWhole */
  async #compiled(url, file, onWhole) {
    try {
      const response = await this.#answered(url, file, AS_IT_LIES);
      if (this.#kept) onWhole();
      return await WebAssembly.compileStreaming(
        this.#kept ? withType(response, file) : this.#checkedAtTheEnd(response, file, onWhole),
      );
    } catch {
      this.#kept = false; // damaged since: from here on each file is checked, as if it came from afar
      const response = await this.#checked(url, file, AFRESH);
      onWhole();
      return WebAssembly.compileStreaming(response);
    }
  }

  /** @param {string} url @param {RuntimeFile} file @param {RequestCache} cache */
  async #answered(url, file, cache) {
    const response = await this.#network(url, { cache });
    if (!response.ok) throw new Error(`${file.name} could not be had (${response.status})`);
    return response;
  }

  /** @param {string} url @param {RuntimeFile} file @param {RequestCache} cache */
  async #checked(url, file, cache) {
    const response = await this.#answered(url, file, cache);
    /** @type {Uint8Array<ArrayBuffer>[]} */
    const chunks = [];
    const reader = bodyOf(response).getReader();
    for (let step = await reader.read(); !step.done; step = await reader.read()) {
      chunks.push(step.value);
      this.#onArrival(step.value.length);
    }
    return answerOf(file, await whole(chunks, file));
  }

  /**
   * The file passed on as it arrives, but for the last part, which is held back until the whole is what the build made.
   * @param {Response} response @param {RuntimeFile} file @param {() => void} onWhole
   */
  #checkedAtTheEnd(response, file, onWhole) {
    /** @type {Uint8Array<ArrayBuffer>[]} */
    const chunks = [];
    /** @type {TransformStream<Uint8Array<ArrayBuffer>, Uint8Array<ArrayBuffer>>} */
    const passOn = new TransformStream({
      transform: (chunk, out) => {
        this.#onArrival(chunk.length);
        if (chunks.length) out.enqueue(chunks.at(-1));
        chunks.push(chunk);
      },
      flush: async (out) => {
        await whole(chunks, file);
        if (chunks.length) out.enqueue(chunks.at(-1));
        onWhole();
      },
    });
    return answerOf(file, bodyOf(response).pipeThrough(passOn));
  }

  /**
   * Imports cannot carry a hash in a worker: the fetch before checks it, the import then finds the same file in the
   * cache. A worker that was made from a text, since its host calls scripts something else, makes its modules so too.
   * @param {string} role
   */
  async module(role) {
    if (!this.#imported.has(role)) {
      const answer = await this.fetch(this.url(role));
      const asText = self.location.protocol === "blob:" && answer instanceof Response;
      this.#imported.set(role, await import(asText ? await addressOf(answer) : this.url(role)));
    }
    return this.#imported.get(role);
  }
}

/** @param {Response} response */
function bodyOf({ body }) {
  if (!body) throw new Error("the answer is empty");
  return body;
}

/** @param {Uint8Array<ArrayBuffer>[]} chunks @param {RuntimeFile} file */
async function whole(chunks, file) {
  const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  if ((await hashOf(bytes)) !== file.integrity) throw new Error(`${file.name} is not what the build made`);
  return bytes;
}

/** @param {RuntimeFile} file */
const typeOf = ({ name }) => (name.endsWith(".wasm") ? MACHINE_CODE : "");

/**
 * What is handed on has the type that the browser insists on, whatever the host called it.
 * @param {RuntimeFile} file @param {BodyInit} body
 */
const answerOf = (file, body) => new Response(body, { headers: { "Content-Type": typeOf(file) } });

/** @param {Response} response @param {RuntimeFile} file */
function withType(response, file) {
  return response.headers.get("Content-Type") === typeOf(file) ? response : answerOf(file, bodyOf(response));
}

/** @param {Response} answer */
async function addressOf(answer) {
  return URL.createObjectURL(new Blob([await answer.arrayBuffer()], { type: "text/javascript" }));
}
