/** Says how Python is when that matters to the reader: when she waits for it, and when it does not come at all. */

import { onState, wake } from "../python/python.js";
import { clear, notice } from "./notices.js";

const PATIENCE = 3000; // [ms] a question that waits longer for Python to wake is worth a word
/** @type {import("../python/python.js").State | null} */
let now = null;
/** @type {number | undefined} */
let slow;
let pressed = false;

function tryAgain() {
  pressed = true;
  wake();
}

function tellIfAwaited() {
  slow = undefined;
  if (now?.awaited) notice("python", now.sentence);
}

onState((state) => {
  now = state;
  if (state.name === "waking") {
    if (pressed) notice("python", state.sentence);
    else if (state.awaited) slow ??= setTimeout(tellIfAwaited, PATIENCE);
    return;
  }
  clearTimeout(slow);
  slow = undefined;
  pressed = false;
  if (state.name === "absent") notice("python", state.sentence, { action: ["Try again", tryAgain] });
  else clear("python");
});
