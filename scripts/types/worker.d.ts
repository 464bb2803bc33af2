/** From worker-start.js: the address at which the worker of the copy on a disk may import a text as a module. */
declare var handbookAddress: (content: BlobPart) => string;
