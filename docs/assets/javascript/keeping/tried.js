/** Each place where things are kept, tried out: a word is written, read back and deleted. */
import { mendKept } from "../python/kept-files.js";
import { isOnDisk, KEPT_UNDER } from "../site.js";
import * as journal from "./journal.js";
import { keep, last, newId, remove, whyNothingLasts } from "./store.js";

const WORD = "linen";
const PASSED = "written, read back and deleted.";

/** @returns {Promise<string>} how it went, in words */
async function database() {
  const lasting = await whyNothingLasts();
  if (lasting) throw new Error(lasting);
  const id = newId();
  await keep("test", id, WORD, 0);
  const read = await last("test", id);
  await remove("test", id);
  if (read?.text !== WORD || (await last("test", id))) throw new Error("what was read is not what was written.");
  return PASSED;
}

async function ofJournal() {
  if (!(await journal.isThere())) return "this browser has none here.";
  const file = `test.${newId()}`;
  await journal.write(file, [WORD]);
  const { records } = await journal.read(file);
  await journal.remove(file);
  if (records[0] !== WORD || (await journal.files()).includes(file))
    throw new Error("what was read is not what was written.");
  return PASSED;
}

async function texts() {
  const name = `${KEPT_UNDER}test`;
  localStorage.setItem(name, WORD);
  const read = localStorage.getItem(name);
  localStorage.removeItem(name);
  if (read !== WORD || localStorage.getItem(name) !== null) throw new Error("what was read is not what was written.");
  return PASSED;
}

async function handbook() {
  if (isOnDisk) return "this copy on a disk is the handbook itself.";
  if (!navigator.serviceWorker?.controller) return "it is not kept here.";
  const { mended, broken } = await mendKept();
  if (broken) throw new Error("a file is damaged. Open the handbook once with a network, and it is put right.");
  return mended ? "a damaged file was found, and put right." : "every file is as it was made.";
}

/** @type {Record<string, () => Promise<string>>} */
const TRIALS = { database, journal: ofJournal, texts, handbook };

/**
 * @param {string} place
 * @returns {Promise<{passed: boolean, words: string}>}
 */
export async function tried(place) {
  try {
    return { passed: true, words: await TRIALS[place]() };
  } catch (problem) {
    return { passed: false, words: problem.message };
  }
}
