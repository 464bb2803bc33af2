/** The measures in hand are those of the job in hand: what is typed on any page goes into it, and comes from it. */
import { askHouse, ready } from "../keeping/following.js";
import { Held } from "../keeping/held.js";
import { isInJob, measure, onMeasures, wasInJob, write } from "../keeping/in-hand.js";
import { jobInHand, ruler } from "../keeping/kept.js";
import { last, onChange } from "../keeping/store.js";
import { Question } from "../python/messages.js";
import { ask } from "../python/python.js";

const BREATH = 300; // [ms] without another keystroke before the job takes what was typed

let soon = 0;
/** @type {Promise<void>} */
let working = Promise.resolve();

/** Let the job in hand and the measures in hand be alike, one look after another. */
function agree() {
  clearTimeout(soon);
  soon = setTimeout(() => {
    working = working.then(agreeNow).catch(() => {}); // else they agree after the next change
  }, BREATH);
}

async function agreeNow() {
  const id = jobInHand();
  if (!id) return;
  await ready;
  const record = await last("job", id);
  if (!record || jobInHand() !== id) return;
  const held = new Held("job", record);
  const { measures, paths, without, trouble } = await askHouse({ ask: Question.JOB_MEASURES, job: held.text });
  if (trouble || jobInHand() !== id) return;
  for (const [name, path] of Object.entries(paths)) {
    const now = measure(name);
    const inJob = measures[name];
    if (now?.text === inJob) isInJob(name, inJob);
    else if (now?.text === wasInJob(name)) takeFromJob(name, inJob);
    else await giveToJob(held, name, path);
  }
  for (const name of without) if (wasInJob(name) !== undefined) takeFromJob(name, undefined);
}

/** @param {string} name @param {string | undefined} inJob */
function takeFromJob(name, inJob) {
  write([[name, inJob === undefined ? undefined : { text: inJob, readOn: ruler() }]]);
  isInJob(name, inJob);
}

/** @param {Held} held @param {string} name @param {string} path */
async function giveToJob(held, name, path) {
  const { text = "", readOn = ruler() } = measure(name) ?? {};
  const changes = { [path]: text };
  const { reply } = await held.change((job) => ask({ ask: Question.JOB_CHANGE, job, changes, ruler: readOn }));
  if (reply.refusal ?? reply.trouble) return; // it stands in its blank, refused, and the job has what it had
  const [, calculator, field] = path.split(".");
  const kept = JSON.parse(held.text).typed?.[calculator]?.[field];
  if (text === measure(name)?.text && kept !== undefined && kept !== text) write([[name, { text: kept, readOn }]]);
  isInJob(name, kept);
}

onMeasures(agree);
onChange(({ kind, id }) => kind === "job" && id === jobInHand() && agree());
document$.subscribe(({ body }) => body.querySelector(".in-hand") && agree());
