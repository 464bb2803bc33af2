/**
 * Says when this browser had lost what it kept, and what came back, or what it had kept under another name: where it is
 * seen, since it is rare and matters.
 */

import { belowTitle, notice } from "../notices/notices.js";
import { addressOf } from "../site.js";
import { inWords, isOne } from "./everything.js";
import { takeOver } from "./other-places.js";
import { whatWasLost } from "./store.js";

const SAFE = addressOf("house/hand-over/");

whatWasLost()
  .then((sentence) => sentence && tell(sentence))
  .catch(() => {});

takeOver()
  .then((taken) => {
    const words = inWords(taken);
    const begun = words.charAt(0).toUpperCase() + words.slice(1);
    if (words)
      tell(`${begun}, kept by a copy of this handbook in another place, ${isOne(taken) ? "is" : "are"} here now.`);
  })
  .catch(() => {}); // it stays where it is

/** @param {string} sentence */
function tell(sentence) {
  notice("lost", sentence, {
    place: belowTitle(),
    action: ["Share and keep safe", () => location.assign(SAFE)],
  });
}
