/** Numbers kept by an earlier edition of the handbook, with what they meant there. */

/** Kept numbers carry this since the width of a cloth is asked for together with its selvedges. */
export const EDITION = 2;

const WIDTH_WITHOUT_SELVEDGES = ["pieces-from-cloth", "curtains"];

/**
 * @param {string} name the name under which a calculator is kept
 * @param {Record<string, string>} texts field name → text, of an edition before this one
 * @returns {Record<string, string>}
 */
export function asMeantThen(name, texts) {
  const trimmed = name.split("/").some((part) => WIDTH_WITHOUT_SELVEDGES.includes(part)) && "cloth_width" in texts;
  return trimmed ? { measured: "trimmed", ...texts } : texts;
}
