/** The line at the top of a page that says what is in hand, and the list in which each measure can be changed. */
import morphdom from "morphdom";
import { restored } from "../keeping/at-once.js";
import { askHouse, ready } from "../keeping/following.js";
import { measures, onMeasures, write } from "../keeping/in-hand.js";
import { nameOf } from "../keeping/job-name.js";
import { jobInHand, ruler, takeInHand } from "../keeping/kept.js";
import { last, onChange } from "../keeping/store.js";
import { Question } from "../python/messages.js";
import { addressOf } from "../site.js";

const BREATH = 50; // [ms] without another change before the line follows

/** @type {HTMLElement | null} */
let line = null;
let soon = 0;

async function show() {
  const there = line;
  if (!there) return;
  const [inHand, job] = [measures(), await namedJob()];
  if (!Object.keys(inHand).length && !job.id) {
    there.hidden = true;
    return;
  }
  await ready;
  const reply = await askHouse({ ask: Question.IN_HAND, measures: inHand, job, ruler: ruler() });
  const made = document.createElement("div");
  made.innerHTML = reply.line; // made by Python as elements: whatever was typed is escaped in it
  const list = made.querySelector("details");
  if (list) list.open = Boolean(there.querySelector("details")?.open);
  morphdom(there, made, {
    childrenOnly: true,
    onBeforeElUpdated: (now, next) => now !== document.activeElement && !now.isEqualNode(next),
  });
  stayInPlace(() => {
    there.hidden = false;
    there.classList.add("has-place");
  });
}

/**
 * What the reader is at stays under her finger as something comes in above it. A page that is scrolled sees to that by
 * itself.
 * @param {() => void} comeIn
 */
function stayInPlace(comeIn) {
  const inUse = document.activeElement?.closest("article") ? document.activeElement : null;
  const before = inUse?.getBoundingClientRect().top ?? 0;
  comeIn();
  if (inUse && !scrollY) scrollBy({ top: inUse.getBoundingClientRect().top - before, behavior: "instant" });
}

/** The job in hand, as the line names it; {} for none. @returns {Promise<Record<string, string>>} */
async function namedJob() {
  const id = jobInHand();
  const record = id ? await last("job", id).catch(() => undefined) : undefined;
  const name = record ? nameOf(record) : "";
  return name ? { id, name, home: addressOf("").href } : {};
}

function follow() {
  clearTimeout(soon);
  soon = setTimeout(() => show().catch(() => {}), BREATH); // a line that cannot be had stays as it is
}

/** @param {HTMLElement} element */
function upgrade(element) {
  element.addEventListener("change", ({ target }) => {
    const { measure } = target.dataset;
    if (measure) write([[measure, target.value.trim() ? { text: target.value, readOn: ruler() } : undefined]]);
  });
  element.addEventListener("click", ({ target }) => {
    if (target.closest("[data-job-put-down]")) {
      takeInHand("");
      location.reload(); // every page of this window then shows what is in hand without it
      return;
    }
    const name = target.closest("[data-put-down]")?.dataset.putDown;
    if (name === undefined) return;
    const heading = element.querySelector("summary");
    write((name ? [name] : Object.keys(measures())).map((each) => [each]));
    heading?.focus();
  });
}

onMeasures(follow);
onChange(({ kind, id }) => kind === "job" && id === jobInHand() && follow());
restored.then((names) => names.size && follow());

document$.subscribe(({ body }) => {
  line = body.querySelector(".in-hand");
  if (!line) return;
  upgrade(line);
  show().catch(() => {});
});
