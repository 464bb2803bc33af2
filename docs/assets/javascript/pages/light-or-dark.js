/**
 * The choice of light or dark in the header. What was chosen before is applied by a script in the page, before anything
 * is drawn.
 */
/** @type {NodeListOf<HTMLInputElement>} */
const buttons = document.querySelectorAll("[name=__palette]");
const choices = [...buttons];
const LOOKS = ["", "light", "dark"]; // in the order of `palette` in mkdocs.yml

function show() {
  const chosen = lightOrDark();
  choices[chosen].checked = true;
  for (const [at, { nextElementSibling: label }] of choices.entries()) {
    if (label instanceof HTMLElement) label.hidden = at !== chosen;
  }
}

/** @param {number} index of the choice */
function choose(index) {
  try {
    __md_set("__palette", { index });
  } catch {
    globalThis.chosenHere = index; // forbidden: this page still remembers
  }
  show();
}

/** What the reader has chosen, as a copy holds it: "light" or "dark", "" for what the device says. */
export const look = () => LOOKS[lightOrDark()] ?? "";
/** @param {string} name */
export const chooseLook = (name) => choose(Math.max(0, LOOKS.indexOf(name)));

for (const [index, choice] of choices.entries()) {
  choice.addEventListener("change", () => choose(index));
  choice.addEventListener("keydown", ({ key }) => {
    if (key !== "Enter") return;
    const next = choices[(index + 1) % choices.length];
    next.click();
    next.focus();
  });
}
matchMedia("(prefers-color-scheme: dark)").addEventListener("change", show);
show();
