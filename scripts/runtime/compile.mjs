// Compiles archives of Python files with the very Python that will read them: node compile.mjs PYODIDE SOURCE TARGET …
import { readFile, writeFile } from "node:fs/promises";
import { pathToFileURL } from "node:url";

const [pyodideFolder, ...pairs] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(`${pyodideFolder}/pyodide.mjs`));
const python = await loadPyodide();
const program = await readFile(new URL("./compile.py", import.meta.url), "utf8");
for (let i = 0; i < pairs.length; i += 2) {
  python.FS.writeFile("/source.zip", await readFile(pairs[i]));
  python.globals.set("source", "/source.zip");
  python.globals.set("target", "/target.zip");
  python.runPython(program);
  await writeFile(pairs[i + 1], python.FS.readFile("/target.zip"));
}
