/** The head of every sheet, of whatever page: the name of the job in hand, whose numbers stand, and the day. */
import { methodText } from "../keeping/following.js";
import { jobInHand } from "../keeping/kept.js";
import { last, onChange } from "../keeping/store.js";

const OF_NO_HOUSE = "The handbook’s numbers";
const OWN_BESIDE = "Own numbers; the rest the handbook’s";

let job = ""; // the name of the job in hand

document$.subscribe(look);
onChange(({ kind }) => kind === "job" && look());

async function look() {
  const id = jobInHand();
  const record = id && (await last("job", id));
  job = record ? nameIn(record.text) : "";
}

/** @param {string} text */
function nameIn(text) {
  try {
    return String(JSON.parse(text).name ?? "");
  } catch {
    return "";
  }
}

/** 29 November 2026 */
const today = () => new Date().toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });

/** Whose numbers stand on the sheet. @param {Element} page */
function whose(page) {
  if (methodText()) return nameIn(methodText());
  const isHers = [...page.querySelectorAll("form.asked .afresh")].some((way) => !way.hidden);
  return isHers ? OWN_BESIDE : OF_NO_HOUSE;
}

/** @param {string} kind @param {string} text */
function part(kind, text) {
  const made = document.createElement("span");
  made.className = kind;
  made.textContent = text;
  return made;
}

addEventListener("beforeprint", () => {
  const page = document.querySelector(".md-content__inner");
  if (!page) return;
  const order = page.querySelector(".calculator .headed .name"); // a name, or a line to write one on
  const title = page.querySelector("h1")?.firstChild?.textContent ?? "";
  const head = document.createElement("div");
  head.className = "sheet-head";
  const line = document.createElement("p");
  line.append(
    ...(order ? ["Order ", part("name to-write", order.textContent || job), " "] : [part("name", job), " "]),
    part("title", title),
    " ",
    part("of-house", whose(page)),
    " ",
    part("day", today()),
  );
  head.append(line);
  page.prepend(head);
});

addEventListener("afterprint", () => {
  for (const head of document.querySelectorAll(".sheet-head")) head.remove();
});
