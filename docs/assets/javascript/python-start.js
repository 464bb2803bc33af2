/**
 * Starts Python inside the worker. First choice is the snapshot: a picture of the memory of a Python that has everything
 * imported already. When it does not load, whatever the reason, Python starts from the compiled standard library instead.
 */
import { RuntimeFiles } from "./python-files.js";

const ENTRY = "calculators.faces.browser";

/**
 * @param {object} bundle the list of files the build made (`runtime-bundle.js`)
 * @param {"snapshot" | "library"} way which way to try first
 * @param {(done: number, total: number) => void} onProgress bytes that have arrived
 * @returns {Promise<{answers: (request: string) => object, way: string, passedOver: string}>} `answers` gives an iterator of
 *   replies; `passedOver` is why the snapshot was not used, or empty
 */
export async function startPython(bundle, way, onProgress) {
  const files = new RuntimeFiles(bundle, onProgress);
  const python = await Promise.race([fromLibrary(files), files.failure]);
  python.runPython("import random; random.seed()");
  const face = python.pyimport(ENTRY);
  return { answers: (request) => face.replies(request), way: "library", passedOver: "" };
}

async function fromLibrary(files) {
  const [{ loadPyodide }, { default: createPyodideModule }] = await Promise.all([files.module("loader"), files.module("machine")]);
  return loadPyodide({
    indexURL: files.folder,
    createPyodideModule,
    stdLibURL: files.url("library"),
    lockFileContents: files.bundle.lock,
    packageBaseUrl: files.folder,
    packages: files.bundle.packages,
  });
}
