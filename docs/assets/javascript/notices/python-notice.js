/** Says how Python is when that matters to the reader: when she waits for it, and when it does not come at all. */

import { onState, wake } from "../python/python.js";
import { belowTitle, clear, notice } from "./notices.js";

const PATIENCE = 3000; // [ms] a question that waits longer for Python to wake is worth a word
/** @type {import("../python/python.js").State | null} */
let now = null;
/** @type {number | undefined} */
let slow;
let pressed = false;

/**
 * Where the reader waits, so that the notice covers nothing and is seen: in the calculator that she uses, or else in
 * the first that she sees; on a page without one, below its title.
 */
function whereAwaited() {
  const all = [...document.querySelectorAll(".calculator")].filter((each) => each.querySelector(".told-here"));
  const inUse = document.activeElement?.closest(".calculator");
  const inSight = all.find((each) => {
    const { top, bottom } = each.getBoundingClientRect();
    return bottom > 0 && top < innerHeight;
  });
  const section = all.find((each) => each === inUse) ?? inSight ?? all[0];
  return section?.querySelector(".told-here") ?? belowTitle();
}

/** @param {import("../python/python.js").State} state @param {[string, () => void]} [action] what can be pressed */
function tell({ sentence }, action) {
  const focused = document.activeElement?.closest(".notice[data-topic=python]"); // it must not lose the focus
  notice("python", sentence, { place: focused?.parentElement ?? whereAwaited(), action });
}

function tryAgain() {
  pressed = true;
  wake();
}

function tellIfAwaited() {
  slow = undefined;
  if (now?.awaited) tell(now);
}

onState((state) => {
  now = state;
  if (state.name === "waking") {
    if (pressed) tell(state);
    else if (state.awaited) slow ??= setTimeout(tellIfAwaited, PATIENCE);
    return;
  }
  clearTimeout(slow);
  slow = undefined;
  pressed = false;
  if (state.name === "absent") tell(state, ["Try again", tryAgain]);
  else clear("python");
});
