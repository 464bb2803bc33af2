/** Says how Python is when that matters to the reader: when it is slow to come, and when it does not come at all. */
import { clear, notice } from "./notices.js";
import { onState, wake } from "./python.js";

const PATIENCE = 3000; // [ms] a start that takes longer is worth a word
let slow = null;

onState(({ name, sentence, done }) => {
  if (name === "waking") {
    slow ??= setTimeout(() => notice("python", sentence), PATIENCE);
    return;
  }
  clearTimeout(slow);
  slow = null;
  if (name === "absent") notice("python", sentence, { action: ["Try again", wake] });
  else clear("python");
});
