// Splits files as the page of handing over does. node split.mjs FILES: a JSON list of {"base64", "chunk": bytes that
// come at once}; prints a JSON list of {"head", "entries"} or {"trouble"}.
import { readFile } from "node:fs/promises";
import { CopyFile } from "../../../docs/assets/javascript/keeping/copy-file.js";

/** @param {{base64: string, chunk: number}} file */
async function split({ base64, chunk }) {
  const bytes = Buffer.from(base64, "base64");
  const blob = new Blob([bytes]);
  blob.stream = () =>
    new ReadableStream({
      start(stream) {
        for (let at = 0; at < bytes.length; at += chunk) stream.enqueue(new Uint8Array(bytes.subarray(at, at + chunk)));
        stream.close();
      },
    });
  try {
    const file = await CopyFile.split(blob);
    const groups = file.groups([...file.ranges.keys()]);
    const entries = await Promise.all(groups.map((group) => file.texts(group)));
    return { head: file.head, entries: entries.flat(), groups: groups.map(({ length }) => length) };
  } catch (problem) {
    return { trouble: /** @type {Error} */ (problem).message };
  }
}

const files = JSON.parse(await readFile(process.argv[2], "utf8"));
console.log(JSON.stringify(await Promise.all(files.map(split))));
