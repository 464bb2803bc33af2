/**
 * The choice of light or dark in the header. What was chosen before is applied by a script in the page, before anything
 * is drawn.
 */
/** @type {NodeListOf<HTMLInputElement>} */
const buttons = document.querySelectorAll("[name=__palette]");
const choices = [...buttons];

function show() {
  const chosen = lightOrDark();
  choices[chosen].checked = true;
  for (const [at, { nextElementSibling: label }] of choices.entries()) {
    if (label instanceof HTMLElement) label.hidden = at !== chosen;
  }
}

for (const [index, choice] of choices.entries()) {
  choice.addEventListener("change", () => {
    try {
      __md_set("__palette", { index });
    } catch {
      globalThis.chosenHere = index; // forbidden: this page still remembers
    }
    show();
  });
  choice.addEventListener("keydown", ({ key }) => {
    if (key !== "Enter") return;
    const next = choices[(index + 1) % choices.length];
    next.click();
    next.focus();
  });
}
matchMedia("(prefers-color-scheme: dark)").addEventListener("change", show);
show();
