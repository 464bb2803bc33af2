/**
 * For a host that calls scripts or styles something else, such as a plain text, so that the browser refuses them: they
 * are fetched as texts and handed to the browser from here. No module; `at-first-paint.js` brings it where it is
 * needed.
 */
{
  const FOLDER = new URL("./", /** @type {HTMLScriptElement} */ (document.currentScript).src).href;
  const WORKERS = ["python-worker.js", "journal-worker.js"];
  const IMPORT = /(from ?|import ?|import\()"\.\/([\w-]+\.js)"/g;
  /** @type {Map<string, Promise<string>>} */
  const made = new Map(); // by name
  /** @type {Map<string, string>} */
  const workers = new Map(); // by the address that is asked for

  /** @param {string} url */
  async function textOf(url) {
    const answer = await fetch(url);
    if (!answer.ok) throw new Error(`${url} could not be had (${answer.status})`);
    return answer.text();
  }

  /** @param {string} text */
  const address = (text) => URL.createObjectURL(new Blob([text], { type: "text/javascript" }));

  /** An address at which a script of ours can be imported, and all that it imports. @param {string} name */
  function script(name) {
    const known = made.get(name) ?? assembled(name);
    made.set(name, known);
    return known;
  }

  /** @param {string} name @returns {Promise<string>} */
  async function assembled(name) {
    const text = await textOf(FOLDER + name);
    const names = [...new Set(Array.from(text.matchAll(IMPORT), ([, , other]) => other))];
    const addresses = new Map(await Promise.all(names.map(async (other) => entry(other, await script(other)))));
    return address(
      text
        .replace(IMPORT, (_, word, other) => `${word}"${addresses.get(other)}"`)
        .replaceAll("import.meta.url", JSON.stringify(FOLDER + name)),
    );
  }

  /** @param {string} name @param {string} made @returns {[string, string]} */
  const entry = (name, made) => [name, made];

  async function searchWorker() {
    const { search } = JSON.parse(document.querySelector("#__config")?.textContent ?? "{}");
    if (!search) return;
    const url = new URL(search, location.href).href;
    workers.set(url, address(await textOf(url)));
  }

  async function prepare() {
    atFirstPaint.worker?.terminate();
    atFirstPaint.worker = null;
    atFirstPaint.heard.length = 0;
    for (const name of WORKERS) workers.set(FOLDER + name, await script(name));
    searchWorker().catch(() => {});
    globalThis.Worker = class extends Worker {
      /** @param {string | URL} url @param {WorkerOptions} [options] */
      constructor(url, options) {
        const asked = new URL(url, location.href).href;
        super(workers.get(asked) ?? asked, options);
      }
    };
  }

  /** @type {Promise<unknown> | null} */
  let ready = null;
  /** @type {Set<string>} */
  const taken = new Set();
  async function takeRefused() {
    ready ??= prepare();
    await ready;
    for (const src of atFirstPaint.refused) {
      if (taken.has(src)) continue;
      taken.add(src);
      await import(await script(src.slice(FOLDER.length)));
    }
  }

  /** @param {HTMLLinkElement} link */
  async function takeStyles(link) {
    const sheet = new CSSStyleSheet({ baseURL: link.href, media: link.media });
    await sheet.replace(await textOf(link.href));
    document.adoptedStyleSheets.push(sheet);
  }

  for (const link of atFirstPaint.unstyled()) takeStyles(link).catch((problem) => console.warn(problem));
  /** No other script may be there to say it. @param {unknown} problem */
  function say(problem) {
    console.warn(problem);
    const kept = Boolean(navigator.serviceWorker?.controller);
    const sentence = kept
      ? "A file kept on this device is damaged. Open the handbook once with a network, and it is put right."
      : "The calculators could not be loaded, so this page shows its worked examples. Load the page again.";
    const line = Object.assign(document.createElement("p"), { textContent: sentence, className: "not-loaded" });
    line.setAttribute("role", "status");
    if (!document.querySelector(".not-loaded")) document.querySelector("h1")?.after(line);
  }

  const take = () => takeRefused().catch(say);
  if (atFirstPaint.refused.length) take();
  document.addEventListener("error", take, { capture: true });
}
