/** What was typed last, and is not kept, is put back into its document when that is opened next. */
import { clear, notice } from "../notices/notices.js";
import { PUT_BACK } from "../python/messages.js";
import { drop, left } from "./drafts.js";
import { askHouse } from "./following.js";
import { RefusedTexts } from "./refused-texts.js";
import { last, versions } from "./store.js";

/**
 * @param {import("./held.js").Held} held the document
 * @param {Record<string, unknown>} [more] what Python has to know of it beside its text
 * @returns {Promise<import("../python/messages.js").Reply>} `said`: one sentence, empty when there was nothing
 */
export async function putBack(held, more = {}) {
  const { kind, id } = held;
  const found = await left(kind, id);
  if (!found.length) return { said: "" };
  const states = await versions(kind, id);
  const drafts = found
    .flatMap(({ byPath }) => Object.entries(byPath).map(([path, draft]) => ({ path, ...draft })))
    .sort((one, other) => one.at - other.at)
    .map((draft) => ({ ...draft, base: draft.base ? textAt(states, draft.base) : "" }));
  const named = kind === "method" ? "method" : "kept";
  const { reply } = await held.change(
    (text) => askHouse({ ask: PUT_BACK[kind], kind, [named]: text, drafts, ...more }),
    true,
  );
  if (reply.trouble) return { said: "" }; // it is said of the document itself
  const refused = new RefusedTexts(`${kind}/${id}`);
  for (const [path, { text, sentence }] of Object.entries(reply.refused)) refused.note(path, text, sentence);
  const { paths, said } = reply.overtaken;
  for (const { name } of found) drop(name, paths);
  if (said) offerToLetGo(id, said, found);
  return reply;
}

/**
 * Tell what was typed last into documents that are no longer kept here.
 * @param {"job" | "method"} kind
 */
export async function tellOfGone(kind) {
  for (const each of await left(kind)) {
    if (await last(kind, each.id)) continue;
    const texts = Object.entries(each.byPath).flatMap(([path, { texts }]) =>
      path.startsWith("ticks.") ? [] : [`“${texts.at(-1)}”`],
    );
    if (!texts.length) drop(each.name);
    else offerToLetGo(each.id, `Typed last into a ${kind} that is no longer kept here: ${texts.join("; ")}.`, [each]);
  }
}

/** @param {string} id @param {string} said @param {{name: string}[]} drafts */
function offerToLetGo(id, said, drafts) {
  const topic = `drafts of ${id}`;
  const letGo = () => {
    for (const { name } of drafts) drop(name);
    clear(topic);
  };
  notice(topic, said, { action: ["Let it go", letGo] });
}

/**
 * The document as it stood at a revision; null where that is no longer known.
 * @param {{revision: number, text: string}[]} states oldest first @param {number} revision
 */
const textAt = (states, revision) => states.findLast((each) => each.revision <= revision)?.text ?? null;
