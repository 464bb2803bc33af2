/** A link that holds a method or a job itself, and a square code of it where it fits. */

import { encode } from "uqr";
import { Question } from "../python/messages.js";
import { ask } from "../python/python.js";
import { SITE } from "../site.js";

const MOST_SQUARES = 125; // a side; smaller squares are hard to read off a screen with a phone
const SVG = "http://www.w3.org/2000/svg";

/**
 * Show the link in a place of the page.
 * @param {HTMLElement} place emptied first
 * @param {string} text of the method or job
 * @param {"method" | "job"} kind
 */
export async function share(place, text, kind) {
  const { fragment, trouble } = await ask({ ask: Question.SHARE, text });
  if (trouble) throw new Error(trouble);
  const link = `${new URL("house/hand-over/", SITE)}#handed=${fragment}`;
  const field = Object.assign(document.createElement("input"), { readOnly: true, value: link });
  field.setAttribute("aria-label", `A link that holds this ${kind}`);
  const copy = Object.assign(document.createElement("button"), { type: "button", textContent: "Copy the link" });
  copy.addEventListener("click", async () => {
    field.select();
    try {
      await navigator.clipboard.writeText(link);
      copy.textContent = "Copied";
    } catch {
      copy.textContent = "Copy it from the blank, where it is marked";
    }
  });
  place.replaceChildren(field, copy, square(link, kind));
  place.hidden = false;
  place.scrollIntoView({ block: "nearest" });
}

/**
 * The code as a drawing, or a sentence when the link is too long for one.
 * @param {string} link @param {"method" | "job"} kind
 */
function square(link, kind) {
  const made = coded(link);
  if (!made || made.size > MOST_SQUARES)
    return Object.assign(document.createElement("p"), {
      textContent: `This ${kind} is too long for a square code. Send the link or a file.`,
    });
  const path = made.data.flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : []))).join("");
  const [svg, light, dark] = ["svg", "rect", "path"].map((name) => document.createElementNS(SVG, name));
  svg.setAttribute("viewBox", `0 0 ${made.size} ${made.size}`);
  svg.setAttribute("class", "square-code");
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", "The link as a square code for a phone’s camera");
  light.setAttribute("width", String(made.size));
  light.setAttribute("height", String(made.size));
  light.setAttribute("class", "light");
  dark.setAttribute("d", path);
  svg.append(light, dark);
  return svg;
}

/** @param {string} link */
function coded(link) {
  try {
    return encode(link, { ecc: "L", border: 4 });
  } catch {
    return null; // longer than any code can hold
  }
}
