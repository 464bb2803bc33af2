/**
 * Starts Python inside the worker. First choice is a snapshot of the memory of a Python that has
 * everything imported already. When it does not load, whatever the reason, Python starts from the compiled standard
 * library instead.
 */
import { RuntimeFiles } from "./python-files.js";
import { MemorySnapshot } from "./python-snapshot.js";

const SMALLEST = Uint8Array.of(0, 97, 115, 109, 1, 0, 0, 0); // a WebAssembly module with nothing in it
const ENTRY = "calculators.faces.browser";

/**
 * @param {object} from
 * @param {object} from.bundle the list of files the build made (`runtime-bundle.js`)
 * @param {"snapshot" | "library"} from.way which way to try first
 * @param {boolean} from.kept whether the files come from the offline copy
 * @param {(bytes: number) => void} onArrival hears of everything that has arrived
 * @returns {Promise<{answers: (request: string) => object, way: string, passedOver: string}>} `answers` gives an
 *   iterator of replies; `passedOver` is why the snapshot was not used, or empty
 */
export async function startPython({ bundle, way, kept }, onArrival) {
  new WebAssembly.Module(SMALLEST); // where this is refused Pyodide would wait for ever
  const files = new RuntimeFiles(bundle, kept, onArrival);
  if (way !== "snapshot" || !bundle.files.snapshot) return start(fromLibrary, bundle, files, "library", "");
  try {
    return await start(fromSnapshot, bundle, files, "snapshot", "");
  } catch (error) {
    const reason = String(error?.message ?? error);
    console.warn(`Python starts without its snapshot: ${reason}`);
    return start(fromLibrary, bundle, files, "library", reason);
  }
}

async function start(load, bundle, files, way, passedOver) {
  const python = await Promise.race([load(bundle, files), files.failure()]);
  python.runPython("import random; random.seed()"); // a snapshot would repeat the chances of the day it was taken
  const face = python.pyimport(ENTRY);
  return { answers: (request) => face.replies(request), way, passedOver };
}

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

async function fromSnapshot(bundle, files) {
  const snapshot = new MemorySnapshot(bundle.snapshot);
  files.startFetching("loader", "machine");
  const arrived = files.startCompiling("wasm");
  files.startFetching("snapshot");
  arrived.catch(() => {}); // heard of below
  const { loadPyodide, createPyodideModule } = await machinery(files);
  return loadPyodide({
    ...common(bundle, files),
    createPyodideModule: async (settings) => {
      settings.INITIAL_MEMORY = snapshot.memory;
      // The machine is compiled beside this thread, which inflates the snapshot meanwhile; earlier that would hold up
      // what arrives.
      const [machine] = await Promise.all([createPyodideModule(settings), arrived.then(() => draw(files, snapshot))]);
      await snapshot.putInto(machine);
      return machine;
    },
    stdLibURL: files.nothing, // all that is needed of it is in the snapshot
    _loadSnapshot: snapshot.head, // the memory is in the machine when this is read
  });
}

async function draw(files, snapshot) {
  const response = await files.fetch(files.url("snapshot"));
  const reader = response.body.pipeThrough(new DecompressionStream("gzip")).getReader();
  for (let step = await reader.read(); !step.done; step = await reader.read()) snapshot.add(step.value);
}

async function machinery(files) {
  const [{ loadPyodide }, { default: createPyodideModule }] = await Promise.all([
    files.module("loader"),
    files.module("machine"),
  ]);
  return { loadPyodide, createPyodideModule };
}

function common(bundle, files) {
  return { indexURL: files.folder, lockFileContents: structuredClone(bundle.lock), env: { ...bundle.environment } };
}
