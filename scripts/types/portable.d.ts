/** Written in front of the scripts of the copy on a disk by the build; each of the two has its own part of it. */
declare const HANDBOOK: {
  modules: Record<string, string>;
  folder: string;
  entries: string[];
  searchWorker: string;
  workerStart: string;
};

/** What each file of the runtime calls when it has been loaded. */
declare var handbookFile: (name: string, base64: string) => void;

/** The address at which a worker may import a text as a module. */
declare var handbookAddress: (content: BlobPart) => string;

/** What the benchmark puts into a page. */
declare var bench: {
  redrawn: (name: string) => Promise<number>;
  type: (name: string, field: string, text: string) => Promise<number>;
  typeAll: (name: string, field: string, texts: string[]) => Promise<number[]>;
};
