/** Links to a job, whose address names it after a #, and to a batch that is kept as a job at once. */
import { jobInHand, takeInHand } from "../keeping/kept.js";
import { addressOf } from "../site.js";

const MARK = "#job=";
const BEGIN = "#begin-job";

let isToBegin = false;

/** Whether a job is to be begun with what is in hand. Asked once. */
export function takeBegin() {
  const isAsked = isToBegin || location.hash === BEGIN;
  isToBegin = false;
  if (location.hash === BEGIN) history.replaceState(history.state, "", location.pathname);
  return isAsked;
}

/**
 * Offer to begin a job, where none is in hand and a calculator has numbers of the reader's own.
 * @param {HTMLAnchorElement} link @param {boolean} hasOwn
 */
export function offerToBegin(link, hasOwn) {
  link.href = addressOf("batch/").href + BEGIN;
  link.hidden = !hasOwn || Boolean(jobInHand() || link.closest(".walk"));
}

/**
 * Take the job in hand that the address names; the address is then free for the parts of the page. Returns whether it
 * named one.
 */
export function takeFromAddress() {
  if (!location.hash.startsWith(MARK)) return false;
  takeInHand(location.hash.slice(MARK.length));
  history.replaceState(history.state, "", location.pathname);
  return true;
}

/**
 * A link to a job takes it in hand when it is followed in this window: on the way the theme may write another part into
 * the address.
 * @param {() => void} arrived hears that the address has changed
 */
export function followJobLinks(arrived) {
  document.addEventListener(
    "click",
    ({ target, button, ctrlKey, metaKey, shiftKey }) => {
      /** @type {HTMLAnchorElement | null} */
      const link = target.closest?.(`a:is([href*="${MARK}"], [href$="${BEGIN}"])`);
      if (!link || button !== 0 || ctrlKey || metaKey || shiftKey) return;
      if (link.hash === BEGIN) isToBegin = true;
      else takeInHand(link.hash.slice(MARK.length));
    },
    { capture: true },
  );
  addEventListener("hashchange", arrived);
}
