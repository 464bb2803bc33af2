/**
 * A file of everything as a row of entries. It is split byte by byte as it comes off the disk, so that a file of any
 * length is never in memory as a whole: an entry is known by where it begins and ends. What is left, with a 0 in place
 * of each entry, is the head, which Python judges as it judges every entry.
 */

/** [bytes] of a file, for who writes one and who reads one. */
export const LARGEST = 500_000_000;
const LARGEST_HEAD = 8_000_000; // [bytes]; a file of one method or job is all head
const LISTS = new Set(["kept", "methods"]); // where entries stand; "methods" in files of the first version
const AT_ONCE = { entries: 25, bytes: 250_000 }; // of one question to Python
const NOT_OURS = "This is not a file of this handbook. Choose a file that the handbook saved.";

const [QUOTE, ESCAPE, COMMA, COLON, ZERO] = [...'"\\,:0'].map((sign) => sign.charCodeAt(0));
const [OPEN_LIST, CLOSE_LIST, OPEN, CLOSE] = [..."[]{}"].map((sign) => sign.charCodeAt(0));
const MARK_OF_ORDER = [0xef, 0xbb, 0xbf];

/** @typedef {{start: number, end: number}} Range [bytes] */

export class CopyFile {
  /** @param {Blob} blob @param {string} head @param {Range[]} ranges of the entries */
  constructor(blob, head, ranges) {
    this.blob = blob;
    this.head = head;
    this.ranges = ranges;
  }

  /**
   * @param {Blob} blob
   * @throws {Error} with a sentence
   */
  static async split(blob) {
    if (blob.size > LARGEST)
      throw new Error(
        `This file is ${megabytes(blob.size)} large, and at most ${megabytes(LARGEST)} are read. Choose another.`,
      );
    const splitter = new Splitter();
    const chunks = blob.stream().getReader();
    for (let { done, value } = await chunks.read(); !done && value; { done, value } = await chunks.read())
      splitter.read(value);
    return new CopyFile(blob, splitter.head(), splitter.ranges);
  }

  /**
   * The texts of some entries, read together.
   * @param {number[]} numbers one after another as they stand in the file, others may lie between them
   */
  async texts(numbers) {
    if (!numbers.length) return [];
    const start = this.ranges[numbers[0]].start;
    const bytes = await this.blob.slice(start, this.ranges[numbers[numbers.length - 1]].end).arrayBuffer();
    return numbers.map((number) => {
      const { start: from, end } = this.ranges[number];
      return new TextDecoder().decode(new Uint8Array(bytes, from - start, end - from));
    });
  }

  /**
   * Entries in groups that are small enough for one question each.
   * @param {number[]} numbers in order
   */
  groups(numbers) {
    /** @type {number[][]} */
    const groups = [];
    let bytes = 0;
    for (const number of numbers) {
      const size = this.ranges[number].end - this.ranges[number].start;
      const last = groups[groups.length - 1];
      if (last && last.length < AT_ONCE.entries && bytes + size <= AT_ONCE.bytes) {
        last.push(number);
        bytes += size;
      } else {
        groups.push([number]);
        bytes = size;
      }
    }
    return groups;
  }
}

/** @param {number} bytes */
export const megabytes = (bytes) => `${(bytes / 1e6).toLocaleString("en-GB", { maximumFractionDigits: 1 })} MB`;

class Splitter {
  /** @type {Range[]} */
  ranges = [];
  #head = new Uint8Array(4096);
  #headLength = 0;
  #at = 0; // bytes read so far
  #depth = 0;
  #inText = false;
  #isEscaped = false;
  #name = ""; // the last text at the top, as it is written; what a colon makes a name
  #isNaming = false;
  #list = ""; // the name of what is about to begin at the top
  #isInList = false;
  #start = -1; // of the entry that is being read

  /** @param {Uint8Array} bytes that follow those before */
  read(bytes) {
    for (let index = 0; index < bytes.length; index++) {
      const byte = bytes[index];
      if (this.#inText) this.#readInText(byte);
      else this.#readSign(byte, this.#at + index);
      if (!this.#isInList || (this.#start < 0 && this.#depth === 2)) this.#toHead(byte);
    }
    this.#at += bytes.length;
  }

  /** @param {number} byte */
  #readInText(byte) {
    if (this.#isEscaped) this.#isEscaped = false;
    else if (byte === ESCAPE) this.#isEscaped = true;
    else if (byte === QUOTE) {
      this.#inText = false;
      this.#isNaming = false;
      return;
    }
    if (this.#isNaming && this.#name.length < 80) this.#name += String.fromCharCode(byte);
  }

  /** @param {number} byte @param {number} at */
  #readSign(byte, at) {
    const isBetween = this.#isInList && this.#depth === 2 && (byte === COMMA || byte === CLOSE_LIST);
    if (isBetween && this.#start >= 0) {
      this.ranges.push({ start: this.#start, end: at });
      this.#start = -1;
      this.#toHead(ZERO);
    } else if (this.#isInList && this.#depth === 2 && this.#start < 0 && !isBetween && byte > 32) this.#start = at;
    if (byte === QUOTE) {
      this.#inText = true;
      this.#isNaming = this.#depth === 1;
      if (this.#isNaming) this.#name = "";
    } else if (byte === COLON && this.#depth === 1) this.#list = named(this.#name);
    else if (byte === COMMA && this.#depth === 1) this.#list = "";
    else if (byte === OPEN || byte === OPEN_LIST) {
      this.#depth++;
      if (this.#depth === 2) this.#isInList = byte === OPEN_LIST && LISTS.has(this.#list);
    } else if (byte === CLOSE || byte === CLOSE_LIST) {
      this.#depth--;
      if (this.#depth < 2) this.#isInList = false;
    }
  }

  /** @param {number} byte */
  #toHead(byte) {
    if (this.#headLength >= LARGEST_HEAD) throw new Error(NOT_OURS);
    if (this.#headLength === this.#head.length) {
      const longer = new Uint8Array(2 * this.#head.length);
      longer.set(this.#head);
      this.#head = longer;
    }
    this.#head[this.#headLength++] = byte;
  }

  head() {
    const hasMark = MARK_OF_ORDER.every((byte, index) => this.#head[index] === byte);
    return new TextDecoder().decode(this.#head.subarray(hasMark ? MARK_OF_ORDER.length : 0, this.#headLength));
  }
}

/** @param {string} written between its quotation marks */
function named(written) {
  try {
    return JSON.parse(`"${written}"`);
  } catch {
    return "";
  }
}
