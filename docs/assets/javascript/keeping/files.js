/** Saving a text as a file, and saying that something is kept. */

/**
 * Offer a text as a file under a name.
 * @param {string} name @param {string | Blob} text
 */
export function saveFile(name, text, type = "application/json") {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** Said once something is kept: when that was, to the second, so that the next time reads differently. */
export const saidAt = () =>
  `Kept at ${new Date().toLocaleTimeString([], { hour: "2-digit", minute: "2-digit", second: "2-digit" })}.`;
