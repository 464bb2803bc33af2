/**
 * The hash of FIPS 180-4, 6.2, for a page that is not served securely: there browsers hide their own. Only to find
 * files that did not arrive as the build made them.
 */

const BLOCK = 64; // [bytes]
const [ROUNDS, START] = constants();

/**
 * @param {Uint8Array} bytes
 * @returns {Uint8Array<ArrayBuffer>} 32 bytes
 */
export function sha256(bytes) {
  const state = START.slice();
  const whole = bytes.length - (bytes.length % BLOCK);
  const schedule = new Uint32Array(64);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  for (let at = 0; at < whole; at += BLOCK) mix(state, schedule, view, at);
  const end = ending(bytes, whole);
  for (let at = 0; at < end.byteLength; at += BLOCK) mix(state, schedule, end, at);
  const digest = new DataView(new ArrayBuffer(32));
  state.forEach((word, index) => digest.setUint32(4 * index, word));
  return new Uint8Array(digest.buffer);
}

/** The last bytes with a bit behind them and their number at the end. @param {Uint8Array} bytes @param {number} from */
function ending(bytes, from) {
  const left = bytes.length - from;
  const end = new Uint8Array(left < BLOCK - 8 ? BLOCK : 2 * BLOCK);
  end.set(bytes.subarray(from));
  end[left] = 0x80;
  const view = new DataView(end.buffer);
  view.setUint32(end.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(end.length - 4, bytes.length << 3);
  return view;
}

/** @param {Uint32Array} state @param {Uint32Array} schedule @param {DataView} view @param {number} at */
function mix(state, schedule, view, at) {
  for (let i = 0; i < 16; i++) schedule[i] = view.getUint32(at + 4 * i);
  for (let i = 16; i < 64; i++) {
    const [two, fifteen] = [schedule[i - 2], schedule[i - 15]];
    const near = turned(two, 17) ^ turned(two, 19) ^ (two >>> 10);
    const far = turned(fifteen, 7) ^ turned(fifteen, 18) ^ (fifteen >>> 3);
    schedule[i] = near + schedule[i - 7] + far + schedule[i - 16];
  }
  let [a, b, c, d, e, f, g, h] = state;
  for (let i = 0; i < 64; i++) {
    const one =
      (h + (turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) + ((e & f) ^ (~e & g)) + ROUNDS[i] + schedule[i]) | 0;
    const two = ((turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + one) | 0, c, b, a, (one + two) | 0];
  }
  [a, b, c, d, e, f, g, h].forEach((word, index) => {
    state[index] += word;
  });
}

/** @param {number} word @param {number} bits */
const turned = (word, bits) => (word >>> bits) | (word << (32 - bits));

/**
 * The first 32 bits of what follows the point in the cube roots of the first 64 primes, and in the square roots of the
 * first 8.
 */
function constants() {
  /** @type {number[]} */
  const primes = [];
  for (let number = 2; primes.length < 64; number++) if (primes.every((prime) => number % prime)) primes.push(number);
  /** @param {number} root */
  const bits = (root) => (root % 1) * 2 ** 32;
  return [
    Uint32Array.from(primes, (prime) => bits(Math.cbrt(prime))),
    Uint32Array.from(primes.slice(0, 8), (prime) => bits(Math.sqrt(prime))),
  ];
}
