// Asks the browser's Python the same questions twice: started from its library, and from its snapshot. node
// both_ways.mjs BUNDLE QUESTIONS ANSWERS; the files hold a JSON list of requests, and {library, snapshot}: lists of
// last replies.
import { readFile, writeFile } from "node:fs/promises";
import { pathToFileURL } from "node:url";
import { gunzipSync } from "node:zlib";
import { MemorySnapshot } from "../../docs/assets/javascript/python/python-snapshot.js";

const [bundle, questions, answers] = process.argv.slice(2);
const listing = JSON.parse(await readFile(`${bundle}/listing.json`, "utf8"));
/** @param {string} role */
const place = (role) => `${bundle}/${listing.files[role].name}`;
const { loadPyodide } = await import(pathToFileURL(place("loader")).href);
const { default: createPyodideModule } = await import(pathToFileURL(place("machine")).href);
const common = () => ({
  indexURL: bundle,
  lockFileContents: structuredClone(listing.lock),
  env: { ...listing.environment },
});

async function fromLibrary() {
  return loadPyodide({
    ...common(),
    stdLibURL: place("library"),
    packageBaseUrl: bundle,
    packages: listing.packages,
    stdout: () => {},
  });
}

async function fromSnapshot() {
  const snapshot = new MemorySnapshot(listing.snapshot);
  snapshot.add(new Uint8Array(gunzipSync(await readFile(place("snapshot")))));
  await writeFile(`${answers}.nothing`, "");
  return loadPyodide({
    ...common(),
    stdLibURL: `${answers}.nothing`,
    _loadSnapshot: snapshot.head,
    createPyodideModule: async (/** @type {{INITIAL_MEMORY: number}} */ settings) => {
      settings.INITIAL_MEMORY = snapshot.memory;
      const machine = await createPyodideModule(settings);
      await snapshot.putInto(machine);
      return machine;
    },
  });
}

/** @param {any} python @param {object[]} requests */
function ask(python, requests) {
  const face = python.pyimport("calculators.faces.browser");
  return requests.map((request) => [...face.replies(JSON.stringify(request))].at(-1));
}

const requests = JSON.parse(await readFile(questions, "utf8"));
const told = { library: ask(await fromLibrary(), requests), snapshot: ask(await fromSnapshot(), requests) };
await writeFile(answers, JSON.stringify(told));
