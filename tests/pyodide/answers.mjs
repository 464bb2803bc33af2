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
    if question == "traceback":
        return json.dumps(traceback_of_an_error())
    return json.dumps(list(replies(question)))

def traceback_of_an_error():
    """Of every function on the way to an error: its name, the line told, and its first line."""
    try:
        list(replies("no question"))
    except ValueError as error:
        found, at = [], error.__traceback__.tb_next
        while at:
            found.append([at.tb_frame.f_code.co_name, at.tb_lineno, at.tb_frame.f_code.co_firstlineno])
            at = at.tb_next
        return found

answer
`);
for await (const question of createInterface({ input: process.stdin })) console.log(answer(question));
