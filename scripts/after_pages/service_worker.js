// The keeper of the offline copy. The build writes HANDBOOK in front of this: { edition, version, address, files },
// where files maps each path to [bytes, hash]. A copy is kept whole and in one version, or not at all.

const keeper = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));
const SCOPE = keeper.registration.scope;
const FAMILY = `handbook ${SCOPE} `; // other sites may live on the same host
const CACHE = FAMILY + HANDBOOK.version;
const AT_ONCE = 4;
// Large, and handed on as they lie: a browser keeps the compiled code of such files only. Looked at when Python fails.
const RUNTIME = "assets/runtime/";
/** @type {Record<string, string>} */
const TYPES = {
  css: "text/css",
  html: "text/html",
  js: "text/javascript",
  svg: "image/svg+xml",
  wasm: "application/wasm",
  webmanifest: "application/manifest+json",
};
/** @type {Map<string, Promise<boolean>>} */
const checked = new Map(); // by path, since this keeper was started: whether the file is what the build made
const paths = Object.keys(HANDBOOK.files);

keeper.addEventListener("install", (event) => event.waitUntil(keepAll()));

async function keepAll() {
  const cache = await caches.open(CACHE);
  const olderNames = (await caches.keys()).filter((name) => name.startsWith(FAMILY) && name !== CACHE);
  const older = await Promise.all(olderNames.map((name) => caches.open(name)));
  const total = paths.reduce((sum, path) => sum + HANDBOOK.files[path][0], 0);
  const waiting = [...paths];
  let done = 0;
  let givenUp = false;
  const work = async () => {
    while (!givenUp) {
      const path = waiting.shift();
      if (path === undefined) return;
      await keepOne(path, cache, older);
      done += HANDBOOK.files[path][0];
      if (!givenUp) tellAll({ say: "keeping", share: done / total, first: !keeper.registration.active });
    }
  };
  try {
    await Promise.all(Array.from({ length: AT_ONCE }, work));
  } catch (problem) {
    givenUp = true;
    await tellAll({
      say: "not kept",
      why: problem.name === "QuotaExceededError" ? "room" : "network",
      detail: String(problem),
    });
    throw problem;
  }
}

/**
 * A file is taken from where it is nearest: kept already, kept in the older copy, or the network; always checked.
 * @param {string} path @param {Cache} cache @param {Cache[]} older
 */
async function keepOne(path, cache, older) {
  const url = SCOPE + path;
  if (await isRight(await cache.match(url), path)) return;
  for (const other of older) {
    const found = await other.match(url);
    if (found && (await isRight(found.clone(), path))) return cache.put(url, withType(found, path));
  }
  for (const freshness of /** @type {RequestCache[]} */ (["default", "reload"])) {
    const response = await fetch(url, { cache: freshness, redirect: "error", credentials: "same-origin" });
    if (response.status === 200 && (await isRight(response.clone(), path)))
      return cache.put(url, withType(response, path));
  }
  throw new Error(`${path} is not what the build made`);
}

/**
 * A file is kept under the type that browsers insist on, whatever its host called it.
 * @param {Response} response @param {string} path
 */
function withType(response, path) {
  const type = TYPES[path.split(".").pop() ?? ""];
  const said = response.headers.get("Content-Type") ?? "";
  if (!type || said.split(";")[0] === type) return response;
  return new Response(response.body, { headers: { "Content-Type": type } });
}

/** @param {Response | undefined} response @param {string} path */
async function isRight(response, path) {
  if (!response) return false;
  const digest = await crypto.subtle.digest("SHA-256", await response.arrayBuffer());
  return `sha256-${btoa(String.fromCharCode(...new Uint8Array(digest)))}` === HANDBOOK.files[path][1];
}

keeper.addEventListener("activate", (event) => event.waitUntil(dropOlder()));

async function dropOlder() {
  for (const name of await caches.keys()) if (name.startsWith(FAMILY) && name !== CACHE) await caches.delete(name);
}

keeper.addEventListener("message", (event) => {
  if (event.data.say === "take over") event.waitUntil(takeOver(event.data, event.source));
  if (event.data.say === "use now") event.waitUntil(useNow(event.source));
  if (event.data.say === "mend") event.waitUntil(mendAll(event.ports[0]));
});

/** @typedef {ExtendableMessageEvent["source"]} Page */

/**
 * A page that was loaded before there was a copy is taken over only when it is of the same edition.
 * @param {{edition: string}} told @param {Page} page
 */
async function takeOver({ edition }, page) {
  if (edition !== HANDBOOK.edition) return page?.postMessage({ say: "other edition" });
  await keeper.clients.claim();
  page?.postMessage({ say: "in use" });
}

/**
 * Two windows must not run on two versions, nor may one be changed under a reader's hands.
 * @param {Page} page
 */
async function useNow(page) {
  if ((await windows()).length > 1) page?.postMessage({ say: "other windows" });
  else await keeper.skipWaiting();
}

/**
 * Every file is looked at, and one that is damaged is fetched afresh.
 * @param {MessagePort} asker hears how many were put right, and how many could not be
 */
async function mendAll(asker) {
  const waiting = [...paths];
  const told = { mended: 0, broken: 0 };
  const work = async () => {
    for (let path = waiting.shift(); path !== undefined; path = waiting.shift()) {
      const found = await (await caches.open(CACHE)).match(SCOPE + path);
      if (await isRight(found, path)) continue;
      checked.delete(path);
      told[(await inOrder(path)) ? "mended" : "broken"] += 1;
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, work));
  asker.postMessage(told);
}

/** Whether a file is what the build made, once it has been put right where it was not. @param {string} path */
function inOrder(path) {
  const known =
    checked.get(path) ??
    caches
      .open(CACHE)
      .then((cache) => keepOne(path, cache, []))
      .then(
        () => true,
        () => false,
      );
  checked.set(path, known);
  known.then((right) => right || checked.delete(path)); // it may be put right another time
  return known;
}

/** @param {{say: string, [more: string]: unknown}} message */
async function tellAll(message) {
  for (const page of await windows()) page.postMessage(message);
}

/** Every open window of this site, whichever version it runs on. */
async function windows() {
  const open = await keeper.clients.matchAll({ type: "window", includeUncontrolled: true });
  return open.filter((page) => page.url.startsWith(SCOPE));
}

keeper.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = new URL(request.url);
  address.search = address.hash = "";
  if (request.method !== "GET" || !address.href.startsWith(SCOPE)) return;
  const path = decoded(address.href.slice(SCOPE.length));
  const page = path === "" || path.endsWith("/") ? `${path}index.html` : path;
  if (isOurs(page)) event.respondWith(page === "sitemap.xml" ? siteMap() : kept(page));
  else if (isOurs(`${path}/index.html`)) event.respondWith(Response.redirect(`${address.href}/`));
  else if (request.mode === "navigate") event.respondWith(notFound());
});

/** @param {string} path as it stands in an address */
function decoded(path) {
  try {
    return decodeURI(path);
  } catch {
    return path; // no address that was ever written
  }
}

/** @param {string} path */
const isOurs = (path) => Object.hasOwn(HANDBOOK.files, path);

/** @param {string} path */
async function kept(path) {
  const cache = await caches.open(CACHE);
  const small = !path.startsWith(RUNTIME);
  const right = small ? await inOrder(path) : true;
  if (!right && path.endsWith(".js")) return Response.error(); // half a script might keep half of what is written
  const found = await cache.match(SCOPE + path);
  if (found) return found;
  await keepOne(path, cache, []); // the browser made room for something else
  return (await cache.match(SCOPE + path)) ?? Response.error();
}

/** The site map names the address the site was built for; this copy may lie elsewhere. */
async function siteMap() {
  const text = await (await kept("sitemap.xml")).text();
  return new Response(text.replaceAll(`<loc>${HANDBOOK.address}`, `<loc>${SCOPE}`), {
    headers: { "Content-Type": "application/xml" },
  });
}

async function notFound() {
  const { body, headers } = await kept("404.html");
  return new Response(body, { status: 404, headers });
}
