/** The messages between a page and its Python worker, named once for both sides. */

/** What a page says to the worker. */
export const ToWorker = Object.freeze({
  WAKE: "wake", //     {way, kept}: start Python this way, from files that are kept or not
  ASK: "ask", //       {id, request}: answer this
  CANCEL: "cancel", // {id}: nobody waits for this answer any more
  PRACTISE: "practise", // {request}: answer this over and over while nothing is asked
});

/** What the worker says to its page. */
export const FromWorker = Object.freeze({
  PROGRESS: "progress", // {done}: bytes of the runtime that have arrived
  READY: "ready", //       {way, passedOver, done, milliseconds}: Python is awake
  ASLEEP: "asleep", //     {trouble}: Python could not be woken
  WORKING: "working", //   {id}: the call the next step belongs to
  PARTIAL: "partial", //   {id, reply}: an answer that may still improve
  FINAL: "final", //       {id, reply}: the answer
  TROUBLE: "trouble", //   {id, trouble}: no answer, and why
  LOST: "lost", //         {trouble}: Python itself has stopped for good
  PRACTISED: "practised", // {times, milliseconds}: the practice has ended
});

/**
 * What a page asks Python: every question that a script asks, in the words of `QUESTIONS` in
 * `calculators/faces/browser.py`.
 */
export const Question = Object.freeze({
  CALCULATOR: "calculator",
  WALK: "walk",
  NUMBERS: "numbers",
  WHOSE: "whose",
  OWN_WORDS: "own words",
  METHOD_PAGE: "method page",
  NEW_METHOD: "new method",
  METHOD_CHANGE: "method change",
  METHOD_MERGE: "method merge",
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
  TICKET: "ticket",
  TICKET_TICK: "ticket tick",
  TICKET_SIZE: "ticket size",
  TICKET_SETTLE: "ticket settle",
  LOOSE_MERGE: "loose merge",
  SHARE: "share",
  SAVE_ONE: "save one",
  EVERYTHING: "everything",
  HANDED: "handed",
  ONE_HANDED: "one handed",
});

/** The question that joins what two windows have kept of one thing, by its kind. */
export const MERGE = Object.freeze({
  method: Question.METHOD_MERGE,
  job: Question.JOB_MERGE,
  loose: Question.LOOSE_MERGE,
});

/** An error as a plain object, since an Error loses its kind on the way. */
export function plain(error) {
  return { kind: error?.name ?? "Error", detail: String(error?.message ?? error) };
}
