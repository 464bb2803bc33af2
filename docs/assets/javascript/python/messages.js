/** The messages between a page and its Python worker, named once for both sides. */

/** What a page says to the worker. */
export const ToWorker = Object.freeze({
  WAKE: "wake", // start Python
  ASK: "ask", // answer this
  CANCEL: "cancel", // nobody waits for this answer any more
  WARM_UP: "warm up", // answer this over and over while nothing is asked
});

/**
 * @typedef {"snapshot" | "library"} Way the way in which Python is woken
 * @typedef {{type: typeof ToWorker.WAKE, way: Way, kept: boolean}} Wake `kept`: whether its files are kept here
 * @typedef {{type: typeof ToWorker.ASK, id: number, request: string}} Ask
 * @typedef {{type: typeof ToWorker.CANCEL, id: number}} Cancel
 * @typedef {{type: typeof ToWorker.WARM_UP, request: string}} WarmUpRequest
 * @typedef {Wake | Ask | Cancel | WarmUpRequest} MessageToWorker
 */

/** What the worker says to its page. */
export const FromWorker = Object.freeze({
  PROGRESS: "progress", // more of the runtime has arrived
  READY: "ready", // Python is awake
  ASLEEP: "asleep", // Python could not be woken
  WORKING: "working", // the call the next step belongs to
  PARTIAL: "partial", // an answer that may still improve
  FINAL: "final", // the answer
  TROUBLE: "trouble", // no answer, and why
  LOST: "lost", // Python itself has stopped for good
  WARMED_UP: "warmed up", // the warm-up has ended
});

/**
 * @typedef {{kind: string, detail: string}} Trouble
 * @typedef {{way: Way, passedOver: string, done: number, milliseconds: number}} Start how Python woke: `passedOver`
 *   is why not by its snapshot, `done` the bytes of the runtime that have arrived
 * @typedef {Record<string, any>} Reply what Python answers: its parts, by the names that its question gives them
 * @typedef {{type: typeof FromWorker.PROGRESS, done: number}} Progress
 * @typedef {{type: typeof FromWorker.READY} & Start} Ready
 * @typedef {{type: typeof FromWorker.ASLEEP | typeof FromWorker.LOST, trouble: Trouble}} Gone
 * @typedef {{type: typeof FromWorker.WORKING, id: number}} Working
 * @typedef {{type: typeof FromWorker.PARTIAL | typeof FromWorker.FINAL, id: number, reply: Reply}} Answered
 * @typedef {{type: typeof FromWorker.TROUBLE, id: number, trouble: Trouble}} Refused
 * @typedef {{type: typeof FromWorker.WARMED_UP, times: number, milliseconds: number}} WarmedUp
 * @typedef {Progress | Ready | Gone | Working | Answered | Refused | WarmedUp} MessageFromWorker
 */

/**
 * What a page asks Python: every question that a script asks, in the words of `QUESTIONS` in
 * `calculators/faces/browser.py`.
 */
export const Question = Object.freeze({
  CALCULATOR: "calculator",
  WALK: "walk",
  NUMBERS: "numbers",
  IN_HAND: "in hand",
  WHOSE: "whose",
  OWN_WORDS: "own words",
  METHOD_PAGE: "method page",
  NEW_METHOD: "new method",
  METHOD_CHANGE: "method change",
  METHOD_MERGE: "method merge",
  METHOD_PUT_BACK: "method put back",
  METHOD_CHANGES: "method changes",
  METHOD_DIFFERENCE: "method difference",
  METHODS: "methods",
  JOBS: "jobs",
  NEW_JOB: "new job",
  COPY_JOB: "copy job",
  JOB_OPENED: "job opened",
  JOB_CHANGE: "job change",
  JOB_MERGE: "job merge",
  JOB_CHANGES: "job changes",
  JOB_MEASURES: "job measures",
  TICKET: "ticket",
  TICKET_TICK: "ticket tick",
  TICKET_SIZE: "ticket size",
  TICKET_SETTLE: "ticket settle",
  LOOSE_MERGE: "loose merge",
  PUT_BACK: "put back",
  SHARE: "share",
  UNPACK: "unpack",
  SAVE_SOME: "save some",
  FILE_AROUND: "file around",
  COUNT: "count",
  HANDED: "handed",
  HANDED_SOME: "handed some",
  HANDED_AROUND: "handed around",
  TAKE: "take",
});

/** The question that joins what two windows have kept of one thing, by its kind. */
export const MERGE = Object.freeze({
  method: Question.METHOD_MERGE,
  job: Question.JOB_MERGE,
  loose: Question.LOOSE_MERGE,
});

/** The question that puts what was typed last back into a document, by its kind. */
export const PUT_BACK = Object.freeze({
  method: Question.METHOD_PUT_BACK,
  job: Question.PUT_BACK,
  loose: Question.PUT_BACK,
});

/**
 * A question with what it is about.
 * @typedef {{ask: (typeof Question)[keyof typeof Question], [more: string]: unknown}} Request
 */

/**
 * An error as a plain object, since an Error loses its kind on the way.
 * @param {any} error
 * @returns {Trouble}
 */
export function plain(error) {
  return { kind: error?.name ?? "Error", detail: String(error?.message ?? error) };
}
