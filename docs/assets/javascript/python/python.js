/**
 * The page's one line to Python. A single worker serves the whole visit; it is started when first needed, replaced when
 * it dies, and every question asked of it ends in an answer or in one sentence that says why there is none.
 */

import { SITE } from "../site.js";
import { FromWorker, ToWorker } from "./messages.js";
import bundle from "./runtime-bundle.js";

const SILENCE = 20_000; // [ms] without a sign from a working Python before it is given up
const SLOW_START = 45_000; // [ms] without a byte or a sign while Python wakes
const SENTENCES = {
  waking: "The calculators are waking up.",
  ready: "The calculators are awake.",
  restarted: "The calculators stopped and were started again.",
  absent: "The calculators did not start, so this page shows its worked example. Reading is not affected.",
  silent: "This took too long and was stopped. The last answer is still shown.",
  broken: "This could not be worked out. The last answer is still shown.",
  lost: "The calculators stopped twice on this question. Change a value to try again.",
};

/** Why a question has no answer: `kind` for code, `message` one sentence for the reader, `detail` for the console. */
export class NoAnswer extends Error {
  constructor(kind, detail = "") {
    super(SENTENCES[kind]);
    this.name = "NoAnswer";
    this.kind = kind;
    this.detail = detail;
  }
}

const listeners = new Set();
const calls = new Map(); // id → {request, tries, onPartial, resolve, reject, timeout}
let state = { name: "asleep", sentence: "" };
let worker = null;
let working = null; // id of the call Python is busy with
let watch = null;
let lastId = 0;
let way = "snapshot";
let practised = null; // the worker that has been given something to practise

function tell(name, more = {}) {
  state = { name, sentence: SENTENCES[name] ?? "", awaited: calls.size > 0, ...more };
  for (const listener of listeners) listener(state);
}

/**
 * Follow how Python is: `asleep`, `waking` (with `done` bytes arrived, and whether it is `awaited`), `ready` (with
 * `way`, `passedOver`, `done`), `absent`.
 * @param {(state: {name: string, sentence: string}) => void} callback called at once and at every change
 * @returns {() => void} stops following
 */
export function onState(callback) {
  listeners.add(callback);
  callback(state);
  return () => listeners.delete(callback);
}

/** Start Python without asking anything yet. Does nothing when it is awake or waking. */
export function wake() {
  if (worker) return;
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
  if (!early) return mine.postMessage({ type: ToWorker.WAKE, way, kept: Boolean(navigator.serviceWorker?.controller) });
  atFirstPaint.worker = null; // the next one is started from here
  for (const event of heard.splice(0)) event.type === "error" ? mine.onerror(event) : mine.onmessage(event);
}

/**
 * Ask Python one question.
 * @param {object} request a question in the words of `calculators.faces.browser`
 * @param {object} [options]
 * @param {AbortSignal} [options.signal] stops the work between two steps; the promise then rejects with an AbortError
 * @param {(reply: object) => void} [options.onPartial] hears answers that may still improve
 * @param {number} [options.timeout] silence after which the work is given up [ms]
 * @returns {Promise<object>} the final reply
 * @throws {NoAnswer} with one sentence for the reader
 */
export function ask(request, { signal, onPartial, timeout = SILENCE } = {}) {
  return new Promise((resolve, reject) => {
    if (signal?.aborted) return reject(aborted(signal));
    const id = ++lastId;
    const stop = () => {
      worker?.postMessage({ type: ToWorker.CANCEL, id });
      end(id)?.reject(aborted(signal));
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
    else end(id).reject(new NoAnswer("absent", state.detail));
  });
}

/**
 * Let Python practise on a question before anybody asks one, if it is awake and nothing is asked now. Once in its life
 * is enough.
 * @param {object} request a question as for `ask`
 */
export function practise(request) {
  if (state.name !== "ready" || calls.size > 0 || practised === worker) return;
  practised = worker;
  worker.postMessage({ type: ToWorker.PRACTISE, request: JSON.stringify(request) });
}

function aborted(signal) {
  return signal.reason instanceof DOMException ? signal.reason : new DOMException("No longer needed", "AbortError");
}

function send(id) {
  const call = calls.get(id);
  call.tries += 1;
  worker.postMessage({ type: ToWorker.ASK, id, request: JSON.stringify(call.request) });
  if (state.name === "ready" && calls.size === 1) keepWatch();
}

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
  const patience = state.name === "ready" ? (calls.get(working)?.timeout ?? SILENCE) : SLOW_START;
  watch = setTimeout(() => bury({ kind: "Silence", detail: `no sign for ${patience} ms` }), patience);
}

function hear({ type, id, reply, trouble, ...more }) {
  if (type === FromWorker.PROGRESS) tell("waking", more);
  else if (type === FromWorker.READY) tell("ready", more);
  else if (type === FromWorker.WORKING) working = id;
  else if (type === FromWorker.PARTIAL) calls.get(id)?.onPartial?.(reply);
  else if (type === FromWorker.FINAL) end(id)?.resolve(reply);
  else if (type === FromWorker.TROUBLE) end(id)?.reject(new NoAnswer("broken", trouble.detail));
  else if (type === FromWorker.LOST) return bury(trouble);
  else if (type === FromWorker.ASLEEP) return giveUp(trouble);
  keepWatch();
}

/** Python could not be woken at all: everybody who waits is told, and the next question tries afresh. */
function giveUp(trouble) {
  discard();
  console.warn(`Python did not start: ${trouble.kind}: ${trouble.detail}`);
  tell("absent", trouble);
  for (const id of [...calls.keys()]) end(id).reject(new NoAnswer("absent", trouble.detail));
}

/** The worker died or fell silent: replace it and repeat what was asked, once. */
function bury(trouble) {
  const asleep = state.name !== "ready";
  const guilty = working;
  discard();
  console.warn(`Python was stopped: ${trouble.kind}: ${trouble.detail}`);
  if (trouble.kind === "Silence" && guilty !== null) end(guilty)?.reject(new NoAnswer("silent", trouble.detail));
  if (trouble.kind === "ModuleNotFoundError") way = "library"; // the snapshot lacks something the whole library has
  for (const [id, call] of [...calls])
    if (call.tries > 1) end(id).reject(new NoAnswer(asleep ? "absent" : "lost", trouble.detail));
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
