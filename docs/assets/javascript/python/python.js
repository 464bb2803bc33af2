/**
 * The page's one line to Python. A single worker serves the whole visit; it is started when first needed, replaced when
 * it dies, and every question asked of it ends in an answer or in one sentence that says why there is none.
 */

import { SITE } from "../site.js";
import { mendKept } from "./kept-files.js";
import { FromWorker, ToWorker } from "./messages.js";
import bundle from "./runtime-bundle.js";

const SILENCE = 20_000; // [ms] without a sign from a working Python before it is given up
const SLOW_START = 45_000; // [ms] without a byte or a sign while Python wakes
/** @type {Record<string, string>} */
const SENTENCES = {
  waking: "The calculators are waking up.",
  ready: "The calculators are awake.",
  restarted: "The calculators stopped and were started again.",
  absent: "The calculators did not start, so this page shows its worked example. Reading is not affected.",
  damaged:
    "The calculators did not start: a file kept on this device is damaged. " +
    "Open the handbook once with a network, and it is put right.",
  silent: "This took too long and was stopped. The last answer is still shown.",
  broken: "This could not be worked out. The last answer is still shown.",
  lost: "The calculators stopped twice on this question. Change a value to try again.",
};

/** Why a question has no answer: `kind` for code, `message` one sentence for the reader, `detail` for the console. */
export class NoAnswer extends Error {
  /** @param {"absent" | "damaged" | "silent" | "broken" | "lost"} kind */
  constructor(kind, detail = "") {
    super(SENTENCES[kind]);
    this.name = "NoAnswer";
    this.kind = kind;
    this.detail = detail;
  }
}

/**
 * @import { MessageFromWorker, MessageToWorker, Reply, Request, Trouble, Way } from "./messages.js"
 *
 * @typedef {"asleep" | "waking" | "ready" | "absent"} Name
 * @typedef {{name: Name, sentence: string, awaited?: boolean, done?: number, way?: Way, passedOver?: string,
 *   detail?: string}} State
 *
 * @typedef {object} Call
 * @property {Request} request
 * @property {number} tries
 * @property {((reply: Reply) => void) | undefined} onPartial
 * @property {(reply: Reply) => void} resolve
 * @property {(problem: Error) => void} reject
 * @property {number} timeout [ms]
 * @property {() => void} letGo
 */

/** @type {Set<(state: State) => void>} */
const listeners = new Set();
/** @type {Map<number, Call>} */
const calls = new Map(); // by id
/** @type {State} */
let state = { name: "asleep", sentence: "" };
/** @type {Worker | null} */
let worker = null;
/** @type {number | null} */
let working = null; // id of the call Python is busy with
let watch = 0;
let lastId = 0;
/** @type {Way} */
let way = "snapshot";
/** @type {Worker | null} */
let warmedUp = null; // the worker that has been given something to warm up on

let looked = false; // whether the kept files have been looked at in this visit
let mending = false;

/** @param {Worker | null} to @param {MessageToWorker} message */
const post = (to, message) => to?.postMessage(message);

/** @param {Name} name @param {Partial<State>} [more] */
function tell(name, more = {}) {
  state = { name, sentence: SENTENCES[name] ?? "", awaited: calls.size > 0, ...more };
  for (const listener of listeners) listener(state);
}

/**
 * Follow how Python is: `asleep`, `waking` (with `done` bytes arrived, and whether it is `awaited`), `ready` (with
 * `way`, `passedOver`, `done`), `absent`.
 * @param {(state: State) => void} callback called at once and at every change
 * @returns {() => void} stops following
 */
export function onState(callback) {
  listeners.add(callback);
  callback(state);
  return () => listeners.delete(callback);
}

/** Start Python without asking anything yet. Does nothing when it is awake or waking. */
export function wake() {
  if (worker || mending) return;
  if (!bundle) return tell("absent", { detail: "this copy was built without a runtime" });
  const { worker: early, heard = [] } = globalThis.atFirstPaint ?? {};
  const mine =
    early ?? new Worker(new URL("assets/javascript/python-worker.js", SITE), { type: "module", name: "python" });
  worker = mine;
  mine.onmessage = ({ data }) => worker === mine && hear(data);
  mine.onerror = (event) => {
    event.preventDefault?.();
    if (worker === mine) bury({ kind: "WorkerError", detail: event.message ?? "the worker script did not load" });
  };
  tell("waking", { done: 0 });
  keepWatch();
  if (!early) return post(mine, { type: ToWorker.WAKE, way, kept: Boolean(navigator.serviceWorker?.controller) });
  atFirstPaint.worker = null; // the next one is started from here
  for (const event of heard.splice(0)) {
    if ("data" in event) mine.onmessage?.(event);
    else mine.onerror?.(event);
  }
}

/**
 * Ask Python one question.
 * @param {Request} request a question in the words of `calculators.faces.browser`
 * @param {object} [options]
 * @param {AbortSignal} [options.signal] stops the work between two steps; the promise then rejects with an AbortError
 * @param {(reply: Reply) => void} [options.onPartial] hears answers that may still improve
 * @param {number} [options.timeout] silence after which the work is given up [ms]
 * @returns {Promise<Reply>} the final reply
 * @throws {NoAnswer} with one sentence for the reader
 */
export function ask(request, { signal, onPartial, timeout = SILENCE } = {}) {
  return new Promise((resolve, reject) => {
    if (signal?.aborted) return reject(aborted(signal));
    const id = ++lastId;
    const stop = () => {
      post(worker, { type: ToWorker.CANCEL, id });
      if (signal) end(id)?.reject(aborted(signal));
    };
    calls.set(id, {
      request,
      tries: 0,
      onPartial,
      resolve,
      reject,
      timeout,
      letGo: () => signal?.removeEventListener("abort", stop),
    });
    signal?.addEventListener("abort", stop, { once: true });
    wake();
    if (state.name === "waking") tell("waking", { done: state.done });
    if (worker) send(id);
    else if (!mending) end(id)?.reject(new NoAnswer("absent", state.detail));
  });
}

/**
 * Let Python warm up on a question before anybody asks one, if it is awake and nothing is asked now. Once in its life
 * is enough.
 * @param {Request} request a question as for `ask`
 */
export function startWarmUp(request) {
  if (state.name !== "ready" || calls.size > 0 || warmedUp === worker) return;
  warmedUp = worker;
  post(worker, { type: ToWorker.WARM_UP, request: JSON.stringify(request) });
}

/** @param {AbortSignal} signal */
function aborted(signal) {
  return signal.reason instanceof DOMException ? signal.reason : new DOMException("No longer needed", "AbortError");
}

/** @param {number} id */
function send(id) {
  const call = calls.get(id);
  if (!call) return;
  call.tries += 1;
  post(worker, { type: ToWorker.ASK, id, request: JSON.stringify(call.request) });
  if (state.name === "ready" && calls.size === 1) keepWatch();
}

/** @param {number} id */
function end(id) {
  const call = calls.get(id);
  calls.delete(id);
  call?.letGo();
  if (working === id) working = null;
  return call;
}

/** One timer guards the worker: any sign of life winds it up again. */
function keepWatch() {
  clearTimeout(watch);
  if (state.name === "ready" && calls.size === 0) return;
  const patience = state.name === "ready" ? (calls.get(working ?? 0)?.timeout ?? SILENCE) : SLOW_START;
  watch = setTimeout(() => bury({ kind: "Silence", detail: `no sign for ${patience} ms` }), patience);
}

/** @param {MessageFromWorker} message */
function hear(message) {
  if (message.type === FromWorker.PROGRESS) tell("waking", { done: message.done });
  else if (message.type === FromWorker.READY) ready(message);
  else if (message.type === FromWorker.WORKING) working = message.id;
  else if (message.type === FromWorker.PARTIAL) calls.get(message.id)?.onPartial?.(message.reply);
  else if (message.type === FromWorker.FINAL) end(message.id)?.resolve(message.reply);
  else if (message.type === FromWorker.TROUBLE) end(message.id)?.reject(new NoAnswer("broken", message.trouble.detail));
  else if (message.type === FromWorker.LOST) return bury(message.trouble);
  else if (message.type === FromWorker.ASLEEP) return giveUp(message.trouble);
  keepWatch();
}

/** @param {import("./messages.js").Ready} message */
function ready(message) {
  tell("ready", { ...message });
  if (message.passedOver && !looked) {
    looked = true;
    mendKept(); // the snapshot may be damaged: the next start then finds it whole
  }
}

const mayBeDamaged = () => !looked && Boolean(navigator.serviceWorker?.controller);

/**
 * Python could not be woken at all. Where its files are kept on this device they are looked at first; else everybody
 * who waits is told, and the next question tries afresh.
 * @param {Trouble} trouble
 */
async function giveUp(trouble) {
  discard();
  console.warn(`Python did not start: ${trouble.kind}: ${trouble.detail}`);
  /** @type {"absent" | "damaged"} */
  let why = "absent";
  if (mayBeDamaged()) {
    mending = true;
    const { mended, broken } = await mendKept();
    mending = false;
    looked = !broken; // else once more when asked again, perhaps with a network
    if (mended && !broken) {
      wake();
      for (const id of calls.keys()) send(id);
      return;
    }
    if (broken) why = "damaged";
  }
  tell("absent", { ...trouble, sentence: SENTENCES[why] });
  for (const id of [...calls.keys()]) end(id)?.reject(new NoAnswer(why, trouble.detail));
}

/**
 * The worker died or fell silent: replace it and repeat what was asked, once.
 * @param {Trouble} trouble
 */
function bury(trouble) {
  const asleep = state.name !== "ready";
  if (asleep && mayBeDamaged()) return giveUp(trouble);
  const guilty = working;
  discard();
  console.warn(`Python was stopped: ${trouble.kind}: ${trouble.detail}`);
  if (trouble.kind === "Silence" && guilty !== null) end(guilty)?.reject(new NoAnswer("silent", trouble.detail));
  if (trouble.kind === "ModuleNotFoundError") way = "library"; // the snapshot lacks something the whole library has
  for (const [id, call] of [...calls])
    if (call.tries > 1) end(id)?.reject(new NoAnswer(asleep ? "absent" : "lost", trouble.detail));
  if (asleep && calls.size === 0) return tell("absent", trouble);
  if (calls.size === 0) return tell("asleep", { sentence: SENTENCES.restarted });
  wake();
  for (const id of calls.keys()) send(id);
}

function discard() {
  clearTimeout(watch);
  worker?.terminate();
  worker = null;
  working = null;
}
