// Stands in the theme's search worker where it searches. Words that say nothing are left out, a word is looked for in
// its other forms too, and one that stands nowhere in words that are nearly so.
/**
 * @param {{search: (text: string) => object, index: {invertedIndex: object}}} search the theme's
 * @param {string} text
 */
export default (search, text) => {
  if (/["+*~^]/.test(text)) return search.search(text); // she writes as the search itself understands it
  const words = text
    .toLowerCase()
    .replaceAll("’", "'")
    .split(/[\s\-:]+/)
    .filter(Boolean);
  const telling = words.filter((word) => lunr.stopWordFilter(word));
  const there = Object.keys(search.index.invertedIndex);
  /** @param {string} word */
  const stands = (word) => there.some((each) => each.startsWith(word));
  /** @param {string} word */
  const ofRoot = (word) =>
    word.replace(/(?<=.{3})(?:ies|ing|ed|es|s|y)$/, "").replace(/(?<=..)([b-df-hj-np-tv-z])\1$/, "$1");
  const asked = (telling.length ? telling : words).flatMap((word) => {
    const root = ofRoot(word);
    if (stands(word) || stands(root)) return [`${word}^4`, word, root];
    return word.length > 3 ? [`${word}~${word.length > 7 ? 2 : 1}`] : [word];
  });
  return search.search([...new Set(asked)].join(" "));
};
