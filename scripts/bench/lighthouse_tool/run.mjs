// Runs Lighthouse on one page after another, as a phone would see it: node run.mjs CHROME_PORT ADDRESS…
// Prints one JSON line a page: { address, scores: category → 0…100, below: what keeps a category from 100 }.
import lighthouse from "lighthouse";

const [port, ...addresses] = process.argv.slice(2);
const CATEGORIES = ["performance", "accessibility", "best-practices", "seo"];

for (const address of addresses) {
  const { lhr } = await lighthouse(address, {
    port: Number(port),
    logLevel: "error",
    onlyCategories: CATEGORIES,
    formFactor: "mobile",
  });
  /** @type {Record<string, number>} */
  const scores = {};
  /** @type {Record<string, string[]>} */
  const below = {};
  for (const name of CATEGORIES) {
    const { score, auditRefs } = lhr.categories[name];
    scores[name] = Math.round(score * 100);
    const kept = auditRefs.filter(
      ({ id, weight }) => weight > 0 && lhr.audits[id].score !== null && lhr.audits[id].score < 1,
    );
    below[name] = kept.map(
      ({ id }) => `${id}${lhr.audits[id].displayValue ? ` (${lhr.audits[id].displayValue})` : ""}`,
    );
  }
  console.log(JSON.stringify({ address, scores, below }));
}
