/**
 * On a phone, once the answer has scrolled away, it stands in one line at the foot of the screen, with the way back to
 * its blanks. The line is the last of the page, where it comes to rest, so that it covers nothing there.
 */

const PHONE = matchMedia("(max-width: 30em)");

/** @type {(IntersectionObserver | MutationObserver)[]} */
const watching = []; // of the page in view

document$.subscribe(({ body }) => {
  watching.splice(0).forEach((each) => each.disconnect());
  const answer = foremost(body);
  const page = body.querySelector(".md-content__inner");
  if (!answer || !page || !PHONE.matches) return;
  const section = answer.closest(".calculator");
  const strip = made(section);
  page.append(strip);
  const words = strip.querySelector("span");
  let isPast = false;
  const tell = () => {
    strip.hidden = !isPast;
    if (!isPast) return;
    words.textContent = inShort(answer);
    strip.classList.toggle("is-old", section.querySelector(".answer").classList.contains("is-old"));
  };
  const changes = new MutationObserver(tell);
  changes.observe(section, { childList: true, subtree: true, attributeFilter: ["hidden"] });
  // What lies below the screen counts as seen, so that a jump from there to beyond the answer is noticed.
  const seen = new IntersectionObserver(
    ([entry]) => {
      isPast = !entry.isIntersecting && entry.boundingClientRect.bottom < 0;
      tell();
    },
    { rootMargin: "0px 0px 1000000px 0px" },
  );
  seen.observe(answer);
  watching.push(changes, seen);
});

/**
 * The answer that a page is about: that of its first calculator, but for one that answers with a row of drawings, in
 * which a reader is at work.
 * @param {HTMLElement} body
 * @returns {HTMLElement | undefined}
 */
function foremost(body) {
  /** @type {NodeListOf<HTMLElement>} */
  const answers = body.querySelectorAll(".calculator .answer > .spoken");
  return [...answers].find((each) => !each.closest(".walk") && !each.parentElement?.querySelector(".steps"));
}

/**
 * Up to the end of its first number: “Mark 4 cm”.
 * @param {HTMLElement} answer
 */
function inShort(answer) {
  const parts = [...answer.childNodes];
  const first = parts.findIndex((each) => each.nodeName === "STRONG");
  const short = first < 0 ? parts : parts.slice(0, first + 1);
  return short.map(({ textContent }) => textContent).join("");
}

/**
 * A screen reader hears only the way back: the rest it has heard.
 * @param {HTMLElement} section
 */
function made(section) {
  const strip = Object.assign(document.createElement("p"), { className: "answer-strip", hidden: true });
  const words = document.createElement("span");
  words.setAttribute("aria-hidden", "true");
  const back = Object.assign(document.createElement("button"), { type: "button", textContent: "change" });
  back.setAttribute("aria-label", "Change the numbers");
  back.addEventListener("click", () => {
    const blank = section.querySelector("form.asked :is(input, select)");
    section.scrollIntoView();
    blank?.focus({ preventScroll: true });
  });
  strip.append(words, back);
  return strip;
}
