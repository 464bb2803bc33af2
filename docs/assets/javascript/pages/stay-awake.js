/** Keeps the screen from going dark, where the browser can. */

let wanted = false;
/** @type {WakeLockSentinel | null} */
let lock = null;
/** @type {(on: boolean) => void} */
let tell = () => {};

/**
 * @param {(on: boolean) => void} said hears whether the screen stays on, now and whenever that changes
 */
export async function stayAwake(said) {
  [wanted, tell] = [true, said];
  await ask();
}

export async function letSleep() {
  wanted = false;
  tell = () => {};
  await lock?.release().catch(() => {});
  lock = null;
}

async function ask() {
  try {
    const granted = await navigator.wakeLock.request("screen");
    if (!wanted) return void granted.release();
    lock = granted;
    granted.addEventListener("release", () => tell(false));
    tell(true);
  } catch {
    tell(false); // not there, or refused, as with a battery nearly empty
  }
}

// The browser takes the lock back when the page is out of sight.
document.addEventListener("visibilitychange", () => wanted && document.visibilityState === "visible" && ask());
