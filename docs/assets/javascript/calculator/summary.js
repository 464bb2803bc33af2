/**
 * What a change comes to, for those who hear the page: one summary of it all, of what differs, once it has come to
 * rest.
 */

/** @import { Section } from "./section.js" */

const REST = 700; // [ms] without another answer
const SAME = "The answer stays the same.";

const place = Object.assign(document.createElement("div"), { className: "unseen summary" });
place.setAttribute("role", "status");
document.body.append(place);

/** @type {Map<Section, string>} */
let told = new Map(); // what a reader knows of each calculator of the page
let isAsked = false; // whether she has done anything on this page: what it opens with is read, not told
let soon = 0;

for (const done of ["input", "change", "click"])
  document.addEventListener(done, () => (isAsked = true), { capture: true });

document$.subscribe(() => {
  clearTimeout(soon);
  [told, isAsked] = [new Map(), false];
  place.replaceChildren();
});

/**
 * Tell what is other in these calculators, or has become so before it was told.
 * @param {Section[]} sections
 */
export function tellSoon(sections) {
  for (const each of sections) if (!told.has(each)) told.set(each, each.saidAtFirst);
  clearTimeout(soon);
  soon = setTimeout(tell, REST);
}

function tell() {
  const all = [...told.keys()].filter(({ element }) => element.isConnected);
  if (all.some(({ answer }) => answer.ariaBusy === "true")) return; // it is told with the answer that is on its way
  const others = all.filter((each) => each.says.text !== told.get(each));
  for (const each of others) told.set(each, each.says.text);
  if (!isAsked) return;
  const said = others
    .filter(({ says }) => !says.waits)
    .map(({ says, element }) => (all.length > 1 ? `${element.getAttribute("aria-label")}: ${says.text}` : says.text));
  const waiting = others.filter(({ says }) => says.waits);
  if (waiting.length > 1) said.push(`${waiting.length} answers wait for that.`);
  else said.push(...waiting.map(({ says }) => says.text));
  const words = document.createElement("p");
  words.textContent = said.join(" ") || SAME;
  place.replaceChildren(words);
}
