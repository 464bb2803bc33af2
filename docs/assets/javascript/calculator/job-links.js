/** A link to a job: its address names the job after a #. */
import { takeInHand } from "../keeping/kept.js";

const MARK = "#job=";

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
      const link = target.closest?.(`a[href*="${MARK}"]`);
      if (link && button === 0 && !ctrlKey && !metaKey && !shiftKey) takeInHand(link.hash.slice(MARK.length));
    },
    { capture: true },
  );
  addEventListener("hashchange", arrived);
}
