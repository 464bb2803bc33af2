/**
 * The choice of light or dark in the header. What was chosen before is applied by a script in the page, before anything
 * is drawn.
 */
const LOOKS = ["", "light", "dark"]; // as they are kept, by number
const device = matchMedia("(prefers-color-scheme: dark)");

/** @param {number} index of the choice */
function choose(index) {
  try {
    __md_set("__palette", { index });
  } catch {
    globalThis.chosenHere = index; // forbidden: this page still remembers
  }
  lightOrDark();
}

/** What the reader has chosen, as a copy holds it: "light" or "dark", "" for what the device says. */
export const look = () => LOOKS[lightOrDark()] ?? "";
/** @param {string} name */
export const chooseLook = (name) => choose(Math.max(0, LOOKS.indexOf(name)));

/** Who goes back to what the device says follows it again. */
function chooseOther() {
  const other = document.body.dataset.mdColorScheme === "slate" ? "light" : "dark";
  chooseLook(other === (device.matches ? "dark" : "light") ? "" : other);
}

document.querySelector(".look").addEventListener("click", chooseOther);
device.addEventListener("change", lightOrDark);
