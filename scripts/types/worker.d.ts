/** From worker-start.js: the address at which the worker of the copy on a disk may import a text as a module. */
declare var handbookAddress: (content: BlobPart) => string;

/** In the theme's search worker: gives a word back unless it says nothing, such as "the". */
declare var lunr: { stopWordFilter: (word: string) => string | undefined };
