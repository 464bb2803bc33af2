/** Says when this browser had lost what it kept, and what came back. */
import { whatWasLost } from "../keeping/store.js";
import { SITE } from "../site.js";
import { notice } from "./notices.js";

const SAFE = new URL(`house/hand-over/${SITE.protocol === "file:" ? "index.html" : ""}`, SITE);

whatWasLost()
  .then((sentence) => sentence && notice("lost", sentence, { action: ["Keep it safe", () => location.assign(SAFE)] }))
  .catch(() => {});
