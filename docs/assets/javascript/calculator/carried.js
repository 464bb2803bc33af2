/** Numbers carried by a link: they stand after the # of an address, so that no server ever sees them. */
import { asMeantThen } from "../keeping/kept-before.js";
import { unfold } from "./unfold.js";

const MARK = "#carries=";
const MOST = 40_000; // letters; a longer one was not made here

/**
 * The address of a page with a calculator's numbers.
 * @param {string} name the name under which the calculator is kept
 * @param {Record<string, string>} texts field name → text
 * @param {string} [page] this one, if none is named
 * @param {boolean} [adds] whether these are rows to go below those that stand there
 */
export const carried = (name, texts, page = location.pathname, adds = false) =>
  `${page}${MARK}${encodeURIComponent(JSON.stringify(adds ? { name, texts, adds } : { name, texts }))}`;

/**
 * Links of an answer that take numbers along to another page.
 * @param {HTMLElement} answer
 */
export function dressOnward(answer) {
  const home = document.querySelector("[data-home]")?.dataset.home ?? "";
  for (const link of /** @type {NodeListOf<HTMLAnchorElement>} */ (answer.querySelectorAll("a.onward"))) {
    const { page, calculator, carries, adds } = /** @type {Record<string, string>} */ (link.dataset);
    const path = new URL(`${home}${page}`, location.href).pathname;
    link.href = carried(calculator, JSON.parse(carries), path, adds !== undefined);
    link.hidden = false;
  }
}

/**
 * What an address carries after its #: {name, texts, adds}, or null where it carries nothing that can be read.
 * @param {string} hash
 */
export function arrived(hash) {
  if (!hash.startsWith(MARK) || hash.length > MOST) return null;
  try {
    const { name, texts, adds } = JSON.parse(decodeURIComponent(hash.slice(MARK.length)));
    const sound = typeof name === "string" && texts && Object.values(texts).every((text) => typeof text === "string");
    return sound ? { name, texts: asMeantThen(name, texts), adds: adds === true } : null;
  } catch {
    return null;
  }
}

const HERE = ["This link carries numbers for the blanks below.", "Use these numbers", "Leave them out"];
const INSTEAD = [`${HERE[0]} They take the place of the ones you wrote here.`, HERE[1], "Keep mine"];
const FURTHER = [
  "This link carries a further line. It goes below the lines that you wrote here.",
  "Put it in",
  "Leave it out",
];

/**
 * Ask the reader whether the numbers that came with the link may take the place of her own.
 * @param {{element: HTMLElement, isTyped: boolean}} section @param {{adds: boolean}} brought
 * @param {() => void} take @param {() => void} decline
 */
export function offer(section, { adds }, take, decline) {
  section.element.previousElementSibling?.matches(".offered") && section.element.previousElementSibling.remove();
  const asked = document.createElement("div");
  asked.className = "offered";
  asked.setAttribute("role", "group");
  const words = document.createElement("p");
  const [told, yes, no] = adds ? FURTHER : section.isTyped ? INSTEAD : HERE;
  words.textContent = told;
  asked.append(words, button(yes, take), button(no, decline));
  section.element.before(asked);
  unfold(asked);
  asked.scrollIntoView({ block: "nearest" });

  /** @param {string} label @param {() => void} act */
  function button(label, act) {
    const made = document.createElement("button");
    made.type = "button";
    made.textContent = label;
    made.addEventListener("click", () => {
      asked.remove();
      history.replaceState(history.state, "", location.pathname);
      act();
    });
    return made;
  }
}
