/**
 * What a job in work is called, "" for one that is finished or cannot be read.
 * @param {import("./store.js").DocumentRecord} record
 */
export function nameOf({ text }) {
  try {
    const { name, archived } = JSON.parse(text);
    return archived === true ? "" : String(name || "a job without a name");
  } catch {
    return "";
  }
}
