/** What stands over sheets for the work table once they are printed: the open job's name where the order has none, and the day. */
import { jobInHand } from "./kept.js";
import { last } from "./store.js";

let job = ""; // the name of the job in hand

document$.subscribe(async () => {
  job = "";
  const id = jobInHand();
  const record = id && (await last("job", id));
  if (record) job = nameIn(record.text);
});

function nameIn(text) {
  try {
    return String(JSON.parse(text).name ?? "");
  } catch {
    return "";
  }
}

addEventListener("beforeprint", () => {
  for (const name of document.querySelectorAll(".headed .name")) name.textContent ||= job;
  const day = new Date().toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });
  for (const each of document.querySelectorAll(".headed .day")) each.textContent = day;
});
