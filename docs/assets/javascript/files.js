/** Saving a text as a file, and reading one that the reader chose. */

/** Offer a text as a file under a name. */
export function saveFile(name, text, type = "application/json") {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** The beginning of a file as text: no more than Python would read anyway. */
export const beginning = (file, longest) => file.slice(0, longest).text();
