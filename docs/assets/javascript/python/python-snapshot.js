/**
 * The memory snapshot: a head that Pyodide reads, and of Python's memory what the machine does not bring along
 * by itself and what is not empty. The memory goes straight into the machine, so that it is held and copied only once.
 */
import { hashOf } from "./hash.js";

/**
 * The machine that Python runs on, as far as it matters here.
 * @typedef {{HEAPU8: Uint8Array<ArrayBuffer>, growMemory: (bytes: number) => void}} Machine
 */

export class MemorySnapshot {
  #listed;
  /** @type {Uint8Array[]} */
  #parts = [];
  #length = 0;

  /** @param {import("./runtime-bundle.js").SnapshotListing} listed as the build wrote it */
  constructor(listed) {
    this.#listed = listed;
    /** As much of the snapshot as Pyodide needs to be given; it reads that when the memory is in place. */
    this.head = new Uint8Array(listed.head);
  }

  /** How large the machine's memory must be [bytes]. */
  get memory() {
    return this.#listed.memory;
  }

  /**
   * Take the next part.
   * @param {Uint8Array} part
   */
  add(part) {
    const ofHead = part.subarray(0, Math.max(0, this.head.length - this.#length));
    if (ofHead.length) this.head.set(ofHead, this.#length);
    this.#length += part.length;
    this.#parts.push(part.subarray(ofHead.length));
  }

  /**
   * Put the snapshot into the memory of a machine in which no Python runs yet. Rejects when it is not whole, or
   * this machine's data is not what it was taken with.
   * @param {Machine} machine
   */
  async putInto(machine) {
    if (machine.HEAPU8.length < this.memory) machine.growMemory(this.memory);
    const memory = machine.HEAPU8;
    const { kept, brought, integrity } = this.#listed;
    const data = joined(brought.map(([address, length]) => memory.subarray(address, address + length)));
    if ((await hashOf(data)) !== integrity)
      throw new Error("this machine's data is not what the snapshot was made with");
    const whole = this.head.length + kept.reduce((sum, [, length]) => sum + length, 0);
    if (this.#length !== whole) throw new Error(`the snapshot is ${this.#length} bytes long`);
    this.#write(memory);
    this.#empty(memory);
  }

  /** @param {Uint8Array} memory */
  #write(memory) {
    const runs = this.#listed.kept.values();
    let to = 0;
    let left = 0;
    for (let part of this.#parts.splice(0)) {
      while (part.length) {
        if (!left) [to, left] = runs.next().value ?? [0, 0];
        const fits = part.subarray(0, left);
        memory.set(fits, to);
        to += fits.length;
        left -= fits.length;
        part = part.subarray(fits.length);
      }
    }
  }

  /**
   * What is neither kept nor brought is empty, and nearly always is so by itself.
   * @param {Uint8Array} memory
   */
  #empty(memory) {
    /** @type {[number, number][]} */
    const taken = [...this.#listed.kept, ...this.#listed.brought, [this.memory, 0]];
    taken.sort(([one], [other]) => one - other);
    let from = 0;
    for (const [address, length] of taken) {
      if (from < address && !isEmpty(memory, from, address)) memory.fill(0, from, address);
      from = address + length;
    }
  }
}

/** @param {Uint8Array} memory @param {number} from @param {number} to */
function isEmpty(memory, from, to) {
  // blocks of the build are longer than a word
  const words = new Uint32Array(memory.buffer, memory.byteOffset + from, (to - from) >> 2);
  for (let at = 0; at < words.length; at += 1) if (words[at] !== 0) return false;
  return true;
}

/** @param {Uint8Array[]} parts */
function joined(parts) {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
