/** The line at the top of a page that says what is in hand, and the list in which each measure can be changed. */
import morphdom from "morphdom";
import { restored } from "../keeping/at-once.js";
import { askHouse, ready } from "../keeping/following.js";
import { measures, onMeasures, write } from "../keeping/in-hand.js";
import { nameOf } from "../keeping/job-name.js";
import { jobInHand, onJobInHand, ruler, takeInHand } from "../keeping/kept.js";
import { last, onChange } from "../keeping/store.js";
import { clear, notice } from "../notices/notices.js";
import { Question } from "../python/messages.js";
import { addressOf, KEPT_UNDER } from "../site.js";

const BREATH = 50; // [ms] without another change before the line follows

const PUT_DOWN = "put down"; // the notice about what was put down last
const JOB_PUT_DOWN = `${KEPT_UNDER}job put down`; // in this window: what it was, while the page comes in anew

/** @type {HTMLElement | null} */
let line = null;
// what was done here last
const told = Object.assign(document.createElement("div"), { className: "told-here", role: "status" });
let soon = 0;

async function show() {
  const there = line;
  if (!there) return;
  const [inHand, job] = [measures(), await namedJob()];
  if (!Object.keys(inHand).length && !job.id) {
    there.querySelector("details")?.removeAttribute("open"); // its place is that of one line
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
      sessionStorage.setItem(JOB_PUT_DOWN, jobInHand());
      instead("");
      return;
    }
    const button = target.closest("[data-put-down]");
    if (!button) return;
    const name = button.dataset.putDown;
    const heading = element.querySelector("summary");
    const before = Object.entries(measures()).filter(([each]) => !name || each === name);
    write(before.map(([each]) => [each]));
    heading?.focus();
    tellPutDown(button.ariaLabel ?? "Put down: all of it", () => {
      write(before);
      clear(PUT_DOWN);
    });
  });
}

/** Work on this job, or on none: every page of this window then shows what is in hand with it. @param {string} id */
function instead(id) {
  takeInHand(id);
  location.reload();
}

/** @param {string} sentence @param {() => void} undo */
function tellPutDown(sentence, undo) {
  notice(PUT_DOWN, `${sentence}.`, { action: ["Undo", undo], passes: true, place: told });
}

/** The job that was put down as this page came in anew. Once it is drawn: what the window keeps is read slowly. */
async function tellJobPutDown() {
  await new Promise((resolve) => setTimeout(resolve));
  const id = sessionStorage.getItem(JOB_PUT_DOWN) ?? "";
  sessionStorage.removeItem(JOB_PUT_DOWN);
  const record = id && !jobInHand() ? await last("job", id).catch(() => undefined) : undefined;
  if (record) tellPutDown(`Put down: ${nameOf(record)}. It is kept among your jobs`, () => instead(id));
}

onMeasures(follow);
onJobInHand(follow);
onChange(({ kind, id }) => kind === "job" && id === jobInHand() && follow());
restored.then((names) => names.size && follow());

document$.subscribe(({ body }) => {
  line = body.querySelector(".in-hand");
  if (!line) return;
  upgrade(line);
  line.after(told);
  tellJobPutDown().catch(() => {});
  show().catch(() => {});
});
