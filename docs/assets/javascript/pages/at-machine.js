/**
 * At the machine: one step of a ticket fills the screen until “Leave” is pressed. Nothing but the large buttons does
 * anything: no swipe, no pull, and the device's own way back stays here too, so that a damp thumb loses nothing.
 */
import { KEPT_UNDER } from "../site.js";
import { letSleep, stayAwake } from "./stay-awake.js";

const KEPT_AS = `${KEPT_UNDER}at the machine`; // survives a page that is loaded again, not a new visit

const FOOT = 12; // [px] kept free below the drawing
const LEAST = 96; // [px] the least height at which a drawing is read
const TWICE = 400; // [ms] a touch so soon after a step came is the second half of the one before

/** @type {Record<string, string>} */
const KEYS = { ArrowRight: "next", ArrowLeft: "back", "+": "more", "-": "less", "−": "less", Escape: "leave" };

export class AtMachine {
  /** @type {HTMLElement[]} */
  #outside = [];
  #step = "";
  #came = -Infinity;

  /** @param {HTMLElement} element the ticket @param {(step: string, by: number) => Promise<void>} tick */
  constructor(element, tick) {
    this.element = element;
    this.frame = element.querySelector(".machine");
    this.tick = tick;
    this.job = "";
    this.frame.addEventListener("click", ({ target, timeStamp }) =>
      this.#do(target.closest("[data-do]")?.dataset.do, timeStamp),
    );
    /** @param {KeyboardEvent & {target: HTMLElement}} event */
    this.onKey = (event) => this.#key(event);
    this.onRoom = () => this.#fit();
    this.onBack = () => history.pushState(history.state, "");
  }

  get isOn() {
    return !this.frame.hidden;
  }

  /**
   * Go on where the page was when it was loaded again.
   * @param {string} job
   */
  goOn(job) {
    const place = kept();
    if (place?.job === job) this.enter(job, place.step);
  }

  /** @param {string} job */
  enter(job, step = "") {
    this.job = job;
    this.frame.hidden = false;
    this.element.classList.add("at-machine");
    document.documentElement.classList.add("machine-open");
    this.#shutOut();
    document.addEventListener("keydown", this.onKey);
    history.pushState(history.state, "");
    addEventListener("popstate", this.onBack);
    addEventListener("resize", this.onRoom);
    this.element.addEventListener("scroll", this.onRoom, { capture: true });
    stayAwake((on) => {
      for (const each of this.frame.querySelectorAll("[data-wake]")) each.hidden = (each.dataset.wake === "on") !== on;
    });
    this.show(step || this.#firstToDo());
  }

  leave() {
    if (!this.isOn) return;
    this.close();
    keep(null);
    this.frame.hidden = true;
    this.element.classList.remove("at-machine");
    const here = this.#steps.find((each) => each.dataset.step === this.#step);
    here?.classList.remove("now");
    this.element.querySelector("[data-do=machine]").focus({ preventScroll: true });
    here?.scrollIntoView({ block: "center" });
  }

  /**
   * Let go of everything outside the ticket. The theme may put the page up anew when the device goes back; then it goes
   * on here.
   */
  close() {
    letSleep();
    removeEventListener("popstate", this.onBack);
    removeEventListener("resize", this.onRoom);
    this.element.removeEventListener("scroll", this.onRoom, { capture: true });
    document.removeEventListener("keydown", this.onKey);
    for (const each of this.#outside.splice(0)) each.inert = false;
    document.documentElement.classList.remove("machine-open");
  }

  /** Show one step; once the sheets were drawn afresh, the same one again. */
  show(step = this.#step) {
    const steps = this.#steps;
    const at = Math.max(
      0,
      steps.findIndex((each) => each.dataset.step === step),
    );
    steps.forEach((each, index) => each.classList.toggle("now", index === at));
    this.#step = steps[at]?.dataset.step ?? "";
    this.ticked();
    keep({ job: this.job, step: this.#step });
    steps[at]?.querySelector("h3").focus({ preventScroll: true });
    steps[at]?.querySelector(".what").scrollTo(0, 0);
    this.#fit();
  }

  /** The buttons say what they do now that the step in view is ticked as it is. */
  ticked() {
    const steps = this.#steps;
    const at = steps.findIndex((each) => each.dataset.step === this.#step);
    if (at < 0) return;
    const done = steps[at].querySelector(".done");
    const left = Number(done.dataset.left);
    const isLast = at === steps.length - 1;
    const says = isLast && left < 2 ? "end" : left > 1 ? "bundle" : left ? "step" : "on";
    for (const each of this.frame.querySelectorAll("[data-says]")) each.hidden = each.dataset.says !== says;
    this.#able("back", at > 0);
    this.#able("next", !isLast);
    this.#able("less", !done.querySelector('[data-tick="-1"][aria-disabled]'));
    this.#able("onward", left > 0 || !isLast);
    this.#fit();
  }

  /** Give the drawing the height that the words leave free, and say when something stands further down. */
  #fit() {
    const what = this.element.querySelector(".ticket-step.now .what");
    if (!what) return;
    const figure = what.querySelector("figure.drawing");
    if (figure) {
      figure.style.setProperty("--below", "0px");
      const room = what.clientHeight - (figure.offsetTop - what.offsetTop);
      const below = room - FOOT < LEAST; // none of it rather than half, and then as large as the screen allows
      figure.style.setProperty("--room", `${(below ? what.clientHeight : room) - FOOT}px`);
      if (below) figure.style.setProperty("--below", `${Math.max(0, room)}px`);
    }
    this.frame.classList.toggle("has-more", what.scrollTop + what.clientHeight < what.scrollHeight - 12);
  }

  get #steps() {
    return [...this.element.querySelectorAll(".ticket-step")];
  }

  #firstToDo() {
    return this.#steps.find((each) => !each.querySelector(".done.whole"))?.dataset.step;
  }

  /** @param {string | undefined} what @param {number} [at] when it was pressed, for a touch [ms] */
  #do(what, at) {
    if (what === "leave") this.leave();
    else if (what === "onward") this.#onward(at);
    else if (what === "next" || what === "back") this.#go(what === "next" ? 1 : -1);
    else if (what) this.tick(this.#step, what === "more" ? 1 : -1);
  }

  /**
   * One bundle more is done, or the step is; once it is whole, on to the next.
   * @param {number} [at]
   */
  async #onward(at = Infinity) {
    if (at - this.#came < TWICE) return;
    const step = this.#step;
    const isWhole = () => this.#steps.find((each) => each.dataset.step === step)?.querySelector(".done.whole");
    if (!isWhole()) await this.tick(step, 1);
    if (!this.isOn || this.#step !== step || !isWhole()) return;
    this.#came = performance.now();
    this.#go(1);
  }

  /** @param {1 | -1} by */
  #go(by) {
    const steps = this.#steps;
    const to = steps[steps.findIndex((each) => each.dataset.step === this.#step) + by];
    if (to) this.show(to.dataset.step);
  }

  /** @param {KeyboardEvent & {target: HTMLElement}} event */
  #key(event) {
    if (event.ctrlKey || event.altKey || event.metaKey || event.target.matches("input, select, textarea")) return;
    if (!KEYS[event.key]) return;
    event.preventDefault();
    this.#do(KEYS[event.key]);
  }

  /** @param {string} what @param {boolean} can */
  #able(what, can) {
    this.frame.querySelector(`[data-do=${what}]`).setAttribute("aria-disabled", String(!can));
  }

  /** Everything around the ticket is out of reach while one step fills the screen. */
  #shutOut() {
    for (let node = this.element; node.parentElement && node !== document.body; node = node.parentElement) {
      for (const each of node.parentElement.children) {
        if (!(each instanceof HTMLElement) || each === node || each.inert) continue;
        each.inert = true;
        this.#outside.push(each);
      }
    }
  }
}

/** @returns {{job: string, step: string} | null} */
function kept() {
  try {
    return JSON.parse(sessionStorage.getItem(KEPT_AS) ?? "null");
  } catch {
    return null;
  }
}

/** @param {{job: string, step: string} | null} place */
function keep(place) {
  try {
    sessionStorage.setItem(KEPT_AS, JSON.stringify(place));
  } catch {
    // forbidden: a page loaded again then begins with the sheets
  }
}
