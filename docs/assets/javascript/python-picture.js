/** The snapshot as it travels: a picture of Python's memory without the data that the machine brings along by itself. */
import { hashOf } from "./hash.js";

/**
 * Put back into a picture what was left out of it. Rejects when this machine's data is not what the picture was made with.
 * @param {{start: number, runs: [number, number][], integrity: string}} fromMachine as the build wrote it
 * @param {Uint8Array} memory of the machine, before Python runs in it
 * @param {Uint8Array} picture is completed in place
 */
export async function putBack({ start, runs, integrity }, memory, picture) {
  const left = new Uint8Array(runs.reduce((sum, [, length]) => sum + length, 0));
  let at = 0;
  for (const [address, length] of runs) {
    const data = memory.subarray(address, address + length);
    picture.set(data, start + address);
    left.set(data, at);
    at += length;
  }
  if ((await hashOf(left)) !== integrity) throw new Error("this machine's data is not what the snapshot was made with");
}
