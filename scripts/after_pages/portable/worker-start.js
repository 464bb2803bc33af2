// The Python worker of the copy on a disk. Started as an old-fashioned worker, it then behaves like a module worker;
// what is said to it before it is ready waits. The build fills in HANDBOOK: { modules, folder }.
Object.assign(self, { importScripts: undefined });
self.handbookAddress = (content) => URL.createObjectURL(new Blob([content], { type: "text/javascript" }));
{
  /** @type {MessageEvent[]} */
  const early = [];
  self.onmessage = (event) => early.push(event);
  import(assembler(HANDBOOK.modules, HANDBOOK.folder, self.handbookAddress)("python-worker.js")).then(() =>
    early.forEach((event) => self.onmessage?.(event)),
  );
}
