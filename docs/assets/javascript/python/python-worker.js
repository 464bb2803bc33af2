/**
 * Python in a worker. It answers questions one step at a time, taking turns between the questions that are open, and
 * reads its messages between two steps, so that a long lay plan neither blocks a short answer nor outlives the reader's
 * interest.
 */

import { FromWorker, plain, ToWorker } from "./messages.js";
import { startPython } from "./python-start.js";
import { WarmUp } from "./python-warm-up.js";
import bundle from "./runtime-bundle.js";
// What these import, named here so that all is asked for at once.
import "./python-files.js";
import "./python-snapshot.js";
import "./hash.js";
import "./sha-256.js";

/**
 * @import { Ask, MessageFromWorker, MessageToWorker, Wake } from "./messages.js"
 * @import { Replies } from "./python-warm-up.js"
 */

/** @type {Map<number, Replies>} */
const open = new Map(); // by the id of the question, in the order of turns
/** @type {Ask[]} */
const waiting = []; // questions that came before Python was awake
const breath = new MessageChannel(); // lets messages in between two steps, without a timer's delay
/** @type {((request: string) => Replies) | null} */
let answers = null;
/** @type {WarmUp | null} */
let warmUp = null;
let turning = false;
let arrived = 0; // bytes of the runtime
let said = 0; // when that was last said

/** @param {MessageFromWorker} message */
const post = (message) => self.postMessage(message);

self.onmessage = (/** @type {MessageEvent<MessageToWorker>} */ { data }) => {
  if (data.type === ToWorker.WAKE) wake(data);
  else if (data.type === ToWorker.ASK) answers ? begin(data) : waiting.push(data);
  else if (data.type === ToWorker.CANCEL) cancel(data.id);
  else if (data.type === ToWorker.WARM_UP) startWarmUp(data.request);
};
breath.port1.onmessage = turn;

/** @param {Wake} how */
async function wake({ way, kept }) {
  const began = performance.now();
  try {
    if (!bundle) throw new Error("this copy was built without a runtime");
    const started = await startPython({ bundle, way, kept }, arrive);
    answers = started.answers;
    post({
      type: FromWorker.READY,
      way: started.way,
      passedOver: started.passedOver,
      done: arrived,
      milliseconds: performance.now() - began,
    });
    waiting.splice(0).forEach(begin);
  } catch (error) {
    post({ type: FromWorker.ASLEEP, trouble: plain(error) });
  }
}

/**
 * Counts what arrives and says so, but not oftener than anybody could see.
 * @param {number} bytes
 */
function arrive(bytes) {
  arrived += bytes;
  if (performance.now() - said < 100) return;
  said = performance.now();
  post({ type: FromWorker.PROGRESS, done: arrived });
}

/** @param {string} request */
function answer(request) {
  if (!answers) throw new Error("Python is not awake");
  return answers(request);
}

/** @param {Ask} question */
function begin({ id, request }) {
  guard(id, () => {
    post({ type: FromWorker.WORKING, id });
    open.set(id, answer(request));
  });
  if (!turning && open.size) {
    turning = true;
    turn();
  }
}

/**
 * Whatever is asked meanwhile goes before.
 * @param {string} request
 */
function startWarmUp(request) {
  warmUp = new WarmUp(() => answer(request), nextReply);
  if (turning) return;
  turning = true;
  turn();
}

function turn() {
  const next = open.entries().next();
  if (next.done) {
    turning = warmUp !== null;
    if (turning) warmUpOnce();
    return;
  }
  const [id, replies] = next.value;
  open.delete(id); // goes to the back of the queue
  if (open.size) post({ type: FromWorker.WORKING, id });
  guard(id, () => {
    const reply = nextReply(replies);
    if (reply?.final) replies.destroy();
    else open.set(id, replies);
    if (!reply) post({ type: FromWorker.WORKING, id });
    else post({ type: reply.final ? FromWorker.FINAL : FromWorker.PARTIAL, id, reply });
  });
  breath.port2.postMessage(null);
}

/**
 * An empty step is only a sign of life.
 * @param {Replies} replies
 */
function nextReply(replies) {
  const { value: text, done } = replies.next();
  if (done) throw new Error("the answer ended without a last word");
  return text ? JSON.parse(text) : null;
}

function warmUpOnce() {
  try {
    warmUp?.step();
  } catch (error) {
    warmUp = null;
    if (isFatal(error)) return post({ type: FromWorker.LOST, trouble: plain(error) });
    console.warn(`Python's warm-up was broken off: ${plain(error).detail}`);
  }
  if (warmUp?.isOver) {
    post({ type: FromWorker.WARMED_UP, ...warmUp.record });
    warmUp = null;
  }
  breath.port2.postMessage(null);
}

/** @param {number} id */
function cancel(id) {
  open.get(id)?.destroy();
  open.delete(id);
  const index = waiting.findIndex((question) => question.id === id);
  if (index >= 0) waiting.splice(index, 1);
}

/**
 * Whether Python, as it is, can answer nothing more.
 * @param {any} error
 */
function isFatal(error) {
  return (
    error?.pyodide_fatal_error || error?.type === "ModuleNotFoundError" || error instanceof WebAssembly.RuntimeError
  );
}

/** @param {number} id @param {() => void} step */
function guard(id, step) {
  try {
    step();
  } catch (problem) {
    const error = /** @type {any} */ (problem); // Python's bring a type
    const trouble = plain(error);
    if (error?.type) trouble.kind = error.type;
    post(isFatal(error) ? { type: FromWorker.LOST, trouble } : { type: FromWorker.TROUBLE, id, trouble });
  }
}
