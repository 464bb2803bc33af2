/**
 * Sheets for the work table, however the page is printed: only they, and over each the name of the open job where the
 * order has none, whose house it is, and the day.
 */
import { methodText } from "../keeping/following.js";
import { jobInHand } from "../keeping/kept.js";
import { last, onChange } from "../keeping/store.js";
import { onlySheetsOf } from "./only-sheets.js";
import { today } from "./today.js";

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

/** @param {string} places @param {string} text */
function write(places, text) {
  for (const each of document.querySelectorAll(`.headed ${places}`)) each.textContent = text;
}

addEventListener("beforeprint", () => {
  const section = document.querySelector(".calculator:has(.headed)");
  if (!section) return;
  onlySheetsOf(section);
  for (const name of section.querySelectorAll(".headed .name")) {
    name.dataset.own ??= name.textContent;
    name.textContent = name.dataset.own || job;
  }
  write(".house", nameIn(methodText()));
  write(".day", today());
});
