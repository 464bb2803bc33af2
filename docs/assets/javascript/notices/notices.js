/**
 * Short notices, one sentence each, at most one thing to press: lines in the page, which cover nothing. They stand at
 * its foot, or at the place they are about.
 */

/** @type {Map<string, HTMLElement>} */
const shown = new Map(); // by topic
/** @type {Map<string, number>} */
const passing = new Map(); // timers, by topic
const SEEN = 0.02; // of a bar: what is less is not drawn, since every change of one is dear
const READING = 12; // [s] a notice that passes stays at least this long

// There from the start, since what is put into it later is then read aloud.
const quiet = Object.assign(document.createElement("div"), { className: "quiet-notices" });
quiet.setAttribute("role", "status");
document.body.append(quiet);

/** @param {string} className @param {string} text @param {() => void} press */
function button(className, text, press) {
  const made = document.createElement("button");
  made.type = "button";
  made.className = className;
  made.textContent = text;
  made.addEventListener("click", press);
  return made;
}

/**
 * Show a notice, in place of an earlier one on the same topic.
 * @param {string} topic what it is about, for code
 * @param {string} sentence what the reader is told
 * @param {object} [more]
 * @param {number} [more.share] how much is done, from 0 to 1, shown as a bar
 * @param {[string, () => void]} [more.action] what can be pressed: its words and what it does
 * @param {boolean} [more.passes] whether it goes by itself once it has been read
 * @param {Element} [more.place] where in the page it belongs: an empty element of role status, there before
 */
export function notice(topic, sentence, { share, action, passes, place = quiet } = {}) {
  let row = shown.get(topic);
  if (!row) {
    row = document.createElement("div");
    row.className = "notice";
    row.dataset.topic = topic;
    row.append(document.createElement("p"));
    shown.set(topic, row);
  }
  if (row.parentElement !== place) place.append(row);
  const [text, ...rest] = row.children;
  const bar = rest.find((each) => each instanceof HTMLProgressElement);
  if (bar && share !== undefined && !action) {
    if (share === 1 || Math.abs(share - bar.value) >= SEEN) bar.value = share;
    return; // the sentence is not said again for every step of the bar
  }
  rest.forEach((each) => each.remove());
  text.textContent = sentence;
  if (share !== undefined) row.append(progress(sentence, share));
  if (action) row.append(button("notice-action", action[0], action[1]));
  stay(topic);
  if (passes) letPass(topic, row);
}

/**
 * Takes a notice away after a while, which begins anew whenever the reader points at it, is in it by keyboard, or looks
 * at another window.
 * @param {string} topic @param {HTMLElement} row
 */
function letPass(topic, row) {
  let left = READING;
  passing.set(
    topic,
    setInterval(() => {
      left = document.hidden || row.matches(":hover, :focus-within") ? READING : left - 1;
      if (!left) clear(topic);
    }, 1000),
  );
}

/** @param {string} topic */
function stay(topic) {
  clearInterval(passing.get(topic));
  passing.delete(topic);
}

/** @param {string} label @param {number} share */
function progress(label, share) {
  const bar = document.createElement("progress");
  bar.setAttribute("aria-label", label);
  bar.value = share;
  return bar;
}

/**
 * Take a notice away.
 * @param {string} topic
 */
export function clear(topic) {
  stay(topic);
  shown.get(topic)?.remove();
  shown.delete(topic);
}

/** The place below the title of the page in view, for what must be seen at once. */
export function belowTitle() {
  const title = document.querySelector("article h1");
  const found = title?.nextElementSibling;
  if (!title || found?.matches(".told-here")) return found ?? undefined;
  const made = Object.assign(document.createElement("div"), { className: "told-here" });
  made.setAttribute("role", "status");
  title.after(made);
  return made;
}
