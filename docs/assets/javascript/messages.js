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

/** An error as a plain object, since an Error loses its kind on the way. */
export function plain(error) {
  return { kind: error?.name ?? "Error", detail: String(error?.message ?? error) };
}
