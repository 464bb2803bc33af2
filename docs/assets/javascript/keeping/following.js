/** Whose method the pages follow: the handbook's own, or one that this browser keeps. */

import { Question } from "../python/messages.js";
import { ask } from "../python/python.js";
import { ruler } from "./kept.js";
import { choice, choose, last, onChange } from "./store.js";

/** @type {Set<() => void>} */
const listeners = new Set();
let followed = { id: "", text: "" };
let before = { id: "", text: "" }; // the reader's own, while she looks at the handbook's numbers

const PATIENCE = 3000; // [ms] what the browser keeps may not be had; the pages then go on with the handbook's numbers
/** @type {Promise<void>} */
let looking = Promise.resolve();

/** Settled once it is known whose method is followed, or that this cannot be known now. */
export const ready = Promise.race([look(), new Promise((resolve) => setTimeout(resolve, PATIENCE))]).catch(() => {});

/** The text of the method that is followed, empty for the handbook's own. */
export const methodText = () => followed.text;
export const followedId = () => followed.id;

/**
 * Ask Python a question in the numbers of the method that is followed.
 * @param {import("../python/messages.js").Request} request
 * @param {Parameters<typeof ask>[1]} [options]
 */
export const askHouse = (request, options) => ask({ method: followed.text, ...request }, options);

/**
 * Hear of it when other numbers are to be shown.
 * @param {() => void} callback
 */
export function onFollow(callback) {
  listeners.add(callback);
  return () => listeners.delete(callback);
}

/**
 * Follow a method from now on, on every page; "" for the handbook's own.
 * @param {string} id
 */
export async function follow(id) {
  if (id === "") await choose("before", followed.id || (await choice("before")));
  await choose("method", id);
  await look();
}

/** One look after another, so that an older one never has the last word. */
function look() {
  looking = looking.catch(() => {}).then(lookOnce);
  return looking;
}

async function lookOnce() {
  const [id, earlier] = await Promise.all([choice("method"), choice("before")]);
  const [now, then] = await Promise.all([id ? last("method", id) : null, earlier ? last("method", earlier) : null]);
  const same = now?.text === followed.text || (!now && !followed.text);
  followed = now ? { id, text: now.text } : { id: "", text: "" };
  before = then ? { id: earlier, text: then.text } : { id: "", text: "" };
  if (!same) listeners.forEach((listener) => listener());
}

onChange(async ({ kind, id }) => {
  if (kind === "method" || (kind === "choice" && (id === "method" || id === "before"))) await look();
});

/**
 * The line on a page that says whose numbers it shows.
 * @param {HTMLElement} page
 */
async function upgrade(page) {
  await ready;
  const line = page.querySelector(".whose-method");
  if (!line) return;
  line.addEventListener("click", ({ target }) => {
    const to = target.closest("[data-follow]")?.dataset.follow;
    if (to) follow(to === "mine" ? before.id : "").catch(() => {}); // the line then stays as it is
  });
  const show = async () => {
    const reply = await askHouse({ ask: Question.WHOSE, other: before.text, home: line.dataset.home });
    line.innerHTML = reply.line; // made by Python as elements: whatever was typed is escaped in it
    /** @type {HTMLSelectElement | null} */
    const select = page.querySelector(".ruler-choice select");
    if (select && !ruler()) select.value = reply.ruler;
  };
  const showAll = () => Promise.all([show(), ownWords(page)]).catch(() => {});
  if (followed.text || before.text) showAll();
  onPage(onFollow(showAll));
}

/**
 * The reader's own words, in the places of a page that they are about.
 * @param {HTMLElement} page
 */
async function ownWords(page) {
  const places = [...page.querySelectorAll("[data-own-words]")];
  if (!places.length) return;
  const { words } = await askHouse({
    ask: Question.OWN_WORDS,
    sections: places.map(({ dataset }) => dataset.ownWords),
  });
  places.forEach((place, index) => {
    place.innerHTML = words[index]; // made by Python as elements: whatever was typed is escaped in it
    place.hidden = !words[index];
  });
}

/** @type {(() => void)[]} */
const leave = [];
/** @param {() => void} stop */
const onPage = (stop) => leave.push(stop);

document$.subscribe(({ body }) => {
  leave.splice(0).forEach((stop) => stop());
  upgrade(body);
});
