/** The patch on the home page: the job in hand, or else the one in work changed last; without one, as built. */
import { nameOf } from "../keeping/job-name.js";
import { jobInHand } from "../keeping/kept.js";
import { last, newest, onChange } from "../keeping/store.js";
import { addressOf } from "../site.js";

/** @import { DocumentRecord } from "../keeping/store.js" */

/** @type {HTMLElement | null} */
let patch = null;
/** @type {HTMLAnchorElement | null} */
let built = null; // the link that came with the page

/** @returns {Promise<DocumentRecord | undefined>} */
async function toGoOnWith() {
  const id = jobInHand();
  const inHand = id && (await last("job", id));
  if (inHand && nameOf(inHand)) return inHand;
  const [newestOfAll] = (await newest("job")).filter(nameOf).sort((one, other) => (one.at < other.at ? 1 : -1));
  return newestOfAll;
}

/** @param {DocumentRecord} job */
function linkTo(job) {
  const [link, name] = [document.createElement("a"), document.createElement("strong")];
  link.href = `${addressOf("batch/")}#job=${job.id}`;
  name.textContent = `Go on with ${nameOf(job)}`;
  link.append(name, " with every number as you left it");
  return link;
}

async function show() {
  const job = await toGoOnWith();
  const now = patch?.querySelector("a");
  if (built && now) now.replaceWith(job ? linkTo(job) : built);
}

document$.subscribe(({ body }) => {
  patch = body.querySelector(".go-on");
  built = patch?.querySelector("a") ?? null;
  if (patch) show().catch(() => {}); // what the browser keeps cannot be had: the page stays as it was built
});

onChange(({ kind }) => {
  if (kind === "job" && patch) show().catch(() => {});
});
