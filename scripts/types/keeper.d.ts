/** Written in front of the service worker by the build. */
declare const HANDBOOK: {
  edition: string;
  version: string;
  address: string;
  files: Record<string, [bytes: number, hash: string]>;
};
