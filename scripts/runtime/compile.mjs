// Compiles archives of Python files with the very Python that will read them:
// node compile.mjs PYODIDE SOURCE TARGET OPTIMIZE [SOURCE TARGET OPTIMIZE …]
import { readFile, writeFile } from "node:fs/promises";
import { pathToFileURL } from "node:url";

const [pyodideFolder, ...rest] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(`${pyodideFolder}/pyodide.mjs`).href);
// Of every instruction Python would also keep its columns, which only a traceback shows: a tenth of what travels.
const python = await loadPyodide({ env: { HOME: "/home/pyodide", PYTHONNODEBUGRANGES: "1" } });
const program = await readFile(new URL("./compile.py", import.meta.url), "utf8");
while (rest.length) {
  const [source, target, optimize] = rest.splice(0, 3);
  python.FS.writeFile("/source.zip", await readFile(source));
  const names = python.toPy({ source: "/source.zip", target: "/target.zip", optimize });
  python.runPython(program, { globals: names });
  await writeFile(target, python.FS.readFile("/target.zip"));
}
