/**
 * Keeps the whole handbook on the reader's device, says how far that is, and offers a newer copy when there is one.
 * Never interrupts: whatever changes waits until the reader presses.
 */

import { clear, notice } from "../notices/notices.js";
import { onState } from "../python/python.js";
import { isSpared, readable } from "../python/when-to-wake.js";
import { SITE } from "../site.js";

const SCRIPT = new URL("sw.js", SITE);
const { content: EDITION = "", dataset } = /** @type {HTMLMetaElement} */ (
  document.head.querySelector('meta[name="edition"]')
);
const LOOK_AGAIN = 6 * 3600_000; // [ms] a window that stays open looks for a newer copy this often
const READY = "Ready for the workroom: no network needed.";

const keeper = navigator.serviceWorker; // absent where the page is not served securely
/** @type {ServiceWorkerRegistration | null} */
let registration = null;
let looked = Date.now();
let mayReload = false;

async function keep() {
  clear("keep");
  try {
    const kept = await keeper.register(SCRIPT, { scope: SITE.href, updateViaCache: "none" });
    registration = kept;
    kept.addEventListener("updatefound", () => follow(kept.installing));
    for (const worker of [kept.installing, kept.waiting, kept.active]) follow(worker);
  } catch (problem) {
    stopped("network", problem);
  }
}

/**
 * A worker is looked at now as well: one that an earlier visit left, or that is quicker than this page, has changed its
 * state before anybody hears of it.
 * @param {ServiceWorker | null} worker
 */
function follow(worker) {
  if (!worker) return;
  const look = () => {
    if (worker.state === "installed" && registration?.active) offer();
    if (worker.state === "activated" && !keeper.controller) worker.postMessage({ say: "take over", edition: EDITION });
  };
  worker.addEventListener("statechange", look);
  look();
}

function offer() {
  notice("newer", "A newer copy of the handbook is ready.", { action: ["Use it now", useNewer] });
}

function useNewer() {
  mayReload = true;
  if (registration?.waiting) registration.waiting.postMessage({ say: "use now" });
  else location.reload();
}

/** @param {string} why @param {unknown} [problem] */
function stopped(why, problem = "") {
  console.warn(`The handbook was not kept on this device: ${why}: ${problem}`);
  const sentence =
    why === "room"
      ? "This device has no room to keep the handbook; it works while there is a network."
      : "The handbook could not be kept for use without a network. Reading is not affected.";
  notice("keeping", sentence, { action: ["Try again", keep] });
}

/**
 * What the service worker says, and what is then done.
 * @type {Record<string, (told: any) => unknown>}
 */
const HEARD = {
  keeping: ({ share, first }) => first && notice("keeping", "Keeping the handbook on this device.", { share }),
  "not kept": ({ why, detail }) => stopped(why, detail),
  "in use": () => {
    clear("keeping");
    notice("ready", READY);
  },
  "other edition": offer,
  "other windows": () =>
    notice("newer", "The handbook is open in another window too. Close that one, then use the newer copy here.", {
      action: ["Use it now", useNewer],
    }),
};

function tellNetwork() {
  if (navigator.onLine) return clear("network");
  notice(
    "network",
    keeper?.controller ? "No network. Everything here still works." : "No network. What is open here still works.",
  );
}

function lookAgain() {
  if (document.visibilityState !== "visible" || !navigator.onLine || Date.now() - looked < LOOK_AGAIN) return;
  looked = Date.now();
  registration?.update().catch(() => {});
}

/** Python comes first: what it has fetched for the page need not be fetched again to be kept. */
async function pythonSettled() {
  await new Promise((resolve) => setTimeout(resolve, 1000));
  await new Promise((resolve) => onState(({ name }) => name !== "waking" && resolve(name)));
}

async function begin() {
  addEventListener("online", tellNetwork);
  addEventListener("offline", tellNetwork);
  tellNetwork();
  if (!keeper) return;
  keeper.addEventListener("message", ({ data }) => HEARD[data.say]?.(data));
  keeper.startMessages();
  keeper.addEventListener("controllerchange", () => mayReload && location.reload());
  document.addEventListener("visibilitychange", lookAgain);
  await readable();
  await pythonSettled();
  if (keeper.controller || !isSpared()) return keep();
  const room = `It takes ${dataset.megabytes} MB of room.`;
  notice("keep", `The whole handbook can be kept on this device, for use without a network. ${room}`, {
    action: ["Keep it", keep],
  });
}

begin();
