// Runs instance files under Pyodide in Node: one JSON row a line.
// node browser.mjs PROJECT_FOLDER LIMIT_SECONDS FILE…
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const [project, limit, ...files] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(`${project}/node_modules/pyodide/pyodide.mjs`).href);
const python = await loadPyodide();
python.mountNodeFS("/project", project);
python.runPython("import sys; sys.path.insert(0, '/project'); sys.dont_write_bytecode = True");
const { rows_as_json: rowsAsJson } = python.pyimport("scripts.plan_cases.cases");
for (const file of files) {
  for (const row of rowsAsJson(readFileSync(file, "utf8"), Number(limit))) console.log(row);
}
