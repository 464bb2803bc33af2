/**
 * Starts Python inside the worker. First choice is a snapshot of the memory of a Python that has
 * everything imported already. When it does not load, whatever the reason, Python starts from the compiled standard
 * library instead.
 */
import { RuntimeFiles } from "./python-files.js";
import { MemorySnapshot } from "./python-snapshot.js";

/**
 * @import { Way } from "./messages.js"
 * @import { Replies } from "./python-warm-up.js"
 * @import { Machine } from "./python-snapshot.js"
 * @import { Bundle } from "./runtime-bundle.js"
 *
 * What waking Python asks of its files; each has a role, by which the bundle lists it.
 * @typedef {object} Files
 * @property {string} folder
 * @property {string} nothing an address that answers with an empty file
 * @property {(role: string) => string} url
 * @property {(url: string) => Promise<Response | WebAssembly.Module>} fetch
 * @property {(role: string) => Promise<any>} module
 * @property {(...roles: string[]) => void} startFetching
 * @property {(role: string) => Promise<void>} startCompiling
 * @property {() => Promise<never>} failure
 *
 * Pyodide, as far as it matters here.
 * @typedef {{runPython: (code: string) => unknown, pyimport: (name: string) => any}} Python
 */

const SMALLEST = Uint8Array.of(0, 97, 115, 109, 1, 0, 0, 0); // a WebAssembly module with nothing in it
const ENTRY = "calculators.faces.browser";

/**
 * @param {object} from
 * @param {Bundle} from.bundle the list of files the build made
 * @param {Way} from.way which way to try first
 * @param {boolean} from.kept whether the files come from the offline copy
 * @param {(bytes: number) => void} onArrival hears of everything that has arrived
 * @returns {Promise<{answers: (request: string) => Replies, way: Way, passedOver: string}>} `passedOver` is why the
 *   snapshot was not used, or empty
 */
export async function startPython({ bundle, way, kept }, onArrival) {
  new WebAssembly.Module(SMALLEST); // where this is refused Pyodide would wait for ever
  const files = new RuntimeFiles(bundle, kept, onArrival);
  if (way !== "snapshot" || !bundle.files.snapshot) return start(fromLibrary, bundle, files, "library", "");
  try {
    return await start(fromSnapshot, bundle, files, "snapshot", "");
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    console.warn(`Python starts without its snapshot: ${reason}`);
    return start(fromLibrary, bundle, files, "library", reason);
  }
}

/**
 * @param {(bundle: Bundle, files: Files) => Promise<Python>} load
 * @param {Bundle} bundle @param {Files} files @param {Way} way @param {string} passedOver
 */
async function start(load, bundle, files, way, passedOver) {
  const python = await Promise.race([load(bundle, files), files.failure()]);
  python.runPython("import random; random.seed()"); // a snapshot would repeat the chances of the day it was taken
  const face = python.pyimport(ENTRY);
  return { answers: (/** @type {string} */ request) => face.replies(request), way, passedOver };
}

/** @param {Bundle} bundle @param {Files} files */
async function fromLibrary(bundle, files) {
  const { loadPyodide, createPyodideModule } = await machinery(files);
  return loadPyodide({
    ...common(bundle, files),
    createPyodideModule,
    stdLibURL: files.url("library"),
    packageBaseUrl: files.folder,
    packages: bundle.packages,
  });
}

/** @param {Bundle} bundle @param {Files} files */
async function fromSnapshot(bundle, files) {
  const snapshot = new MemorySnapshot(bundle.snapshot);
  files.startFetching("loader", "machine");
  const arrived = files.startCompiling("wasm");
  files.startFetching("snapshot");
  arrived.catch(() => {}); // heard of below
  const { loadPyodide, createPyodideModule } = await machinery(files);
  return loadPyodide({
    ...common(bundle, files),
    createPyodideModule: async (/** @type {{INITIAL_MEMORY: number}} */ settings) => {
      settings.INITIAL_MEMORY = snapshot.memory;
      // The machine is compiled beside this thread, which inflates the snapshot meanwhile; earlier that would hold up
      // what arrives.
      /** @type {[Machine, void]} */
      const [machine] = await Promise.all([createPyodideModule(settings), arrived.then(() => draw(files, snapshot))]);
      await snapshot.putInto(machine);
      return machine;
    },
    stdLibURL: files.nothing, // all that is needed of it is in the snapshot
    _loadSnapshot: snapshot.head, // the memory is in the machine when this is read
  });
}

/** @param {Files} files @param {MemorySnapshot} snapshot */
async function draw(files, snapshot) {
  const response = await files.fetch(files.url("snapshot"));
  if (!(response instanceof Response) || !response.body) throw new Error("the snapshot is empty");
  const reader = response.body.pipeThrough(new DecompressionStream("gzip")).getReader();
  for (let step = await reader.read(); !step.done; step = await reader.read()) snapshot.add(step.value);
}

/** @param {Files} files */
async function machinery(files) {
  const [{ loadPyodide }, { default: createPyodideModule }] = await Promise.all([
    files.module("loader"),
    files.module("machine"),
  ]);
  return { loadPyodide, createPyodideModule };
}

/** @param {Bundle} bundle @param {Files} files */
function common(bundle, files) {
  return { indexURL: files.folder, lockFileContents: structuredClone(bundle.lock), env: { ...bundle.environment } };
}
