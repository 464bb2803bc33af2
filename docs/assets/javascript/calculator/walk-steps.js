/** The steps of a walk are one line each: title and answer. What a step now says stands there while it is shut. */

/**
 * Keep the line of every step as its section speaks.
 * @param {HTMLElement} walk
 */
export function tellSteps(walk) {
  for (const step of walk.querySelectorAll(".walk-step")) {
    const section = step.querySelector(".calculator");
    if (!section) continue;
    const line = /** @type {HTMLElement} */ (step.querySelector(".step-answer"));
    const tell = () => section.isConnected && tellStep(line, section); // a page that was left is taken apart
    new MutationObserver(tell).observe(section, { childList: true, subtree: true, attributeFilter: ["hidden"] });
    tell();
  }
}

/** @param {HTMLElement} line @param {HTMLElement} section */
function tellStep(line, section) {
  /** @type {NodeListOf<HTMLElement>} */
  const refusals = section.querySelectorAll(".refusal");
  const refusal = [...refusals].find(({ hidden }) => !hidden);
  const oldAnswer = section.querySelector(".old-answer");
  const inTrouble = refusal ?? (oldAnswer.hidden ? null : oldAnswer);
  const said = inTrouble ?? section.querySelector(".answer :is(.spoken, .trouble)");
  line.classList.toggle("in-trouble", inTrouble !== null);
  if (!said || line.textContent === said.textContent) return;
  line.replaceChildren(
    ...[...said.childNodes].filter((each) => each.nodeName !== "BUTTON").map((each) => each.cloneNode(true)),
  );
}
