// Turns modules given as text into addresses a browser can import, each with the addresses of what it imports written
// into it.
/**
 * @param {Record<string, string>} modules by name
 * @param {string} folder where they would lie
 * @param {(text: string) => string} address
 */
// biome-ignore lint/correctness/noUnusedVariables: the build puts what calls it behind it, in the same script.
function assembler(modules, folder, address) {
  /** @type {Record<string, string>} */
  const made = {};
  /** @param {string} name @returns {string} */
  return function assemble(name) {
    const inside = modules[name]
      .replace(
        /(from ?|import ?|import\()"(?:\.\.?\/)+(?:[\w-]+\/)*([\w-]+\.js)"/g,
        (_, word, other) => `${word}"${assemble(other)}"`,
      )
      .replaceAll("import.meta.url", JSON.stringify(folder + name));
    made[name] ??= address(inside);
    return made[name];
  };
}
