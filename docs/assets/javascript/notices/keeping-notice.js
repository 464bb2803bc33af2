/** Says when this browser had lost what it kept, and what came back: where it is seen, since it is rare and matters. */
import { whatWasLost } from "../keeping/store.js";
import { SITE } from "../site.js";
import { belowTitle, notice } from "./notices.js";

const SAFE = new URL(`house/hand-over/${SITE.protocol === "file:" ? "index.html" : ""}`, SITE);

whatWasLost()
  .then((sentence) => sentence && tell(sentence))
  .catch(() => {});

/** @param {string} sentence */
function tell(sentence) {
  notice("lost", sentence, {
    place: belowTitle(),
    action: ["Hand over and keep safe", () => location.assign(SAFE)],
  });
}
