// The browser's Python under Node, from the bundle the site ships: one question (JSON) a line in, a list of replies a
// line out.
import { readFile } from "node:fs/promises";
import { createInterface } from "node:readline";
import { pathToFileURL } from "node:url";

const [bundle] = process.argv.slice(2);
const listing = JSON.parse(await readFile(`${bundle}/listing.json`, "utf8"));
const { loadPyodide } = await import(pathToFileURL(`${bundle}/${listing.files.loader.name}`).href);
const python = await loadPyodide({
  env: listing.environment,
  indexURL: bundle,
  stdLibURL: `${bundle}/${listing.files.library.name}`,
  lockFileContents: listing.lock,
});
for (const name of Object.keys(listing.lock.packages)) {
  python.unpackArchive(new Uint8Array(await readFile(`${bundle}/${listing.files[name].name}`)), "wheel");
}
const answer = python.runPython(`
import json, sys
from calculators.faces.browser import replies

def answer(question):
    if question == "version":
        return json.dumps([sys.version, sys.platform])
    return json.dumps(list(replies(question)))

answer
`);
for await (const question of createInterface({ input: process.stdin })) console.log(answer(question));
