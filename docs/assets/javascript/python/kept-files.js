/** The files of the handbook that are kept on this device: asks their keeper to look at all of them. */

const PATIENCE = 60_000; // [ms] to look at all of them, and to fetch what is damaged

/**
 * Files that are damaged are fetched afresh.
 * @returns {Promise<{mended: number, broken: number}>} how many were put right, and how many could not be
 */
export function mendKept() {
  const keeper = navigator.serviceWorker?.controller;
  const nothing = { mended: 0, broken: 0 };
  if (!keeper) return Promise.resolve(nothing);
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => resolve(data);
    setTimeout(() => resolve(nothing), PATIENCE);
    keeper.postMessage({ say: "mend" }, [port2]);
  });
}
