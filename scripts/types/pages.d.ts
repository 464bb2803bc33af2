/** What a page has beside what browsers have: from the theme, from the build, from scripts that ran before. */

/** The theme's: each page that comes into view. */
declare const document$: { subscribe(hear: (page: Document) => void): void };

/** The theme's: keeps a choice in this browser. */
declare const __md_set: (name: string, value: unknown) => void;

/** From the template of the page: which of the three choices of light or dark stands, the last one chosen. */
declare function lightOrDark(): number;

/** The choice of light or dark where the browser keeps nothing. */
declare var chosenHere: number | undefined;

/** Made by at-first-paint.js, taken over by python.js. */
declare var atFirstPaint: {
  isSpared: () => boolean;
  hasWork: (page: ParentNode) => boolean;
  worker: Worker | null;
  heard: (MessageEvent | ErrorEvent)[];
  unstyled: () => HTMLLinkElement[];
  /** Addresses of modules that did not load, for as-text.js. */
  refused: string[];
};

/** How the reader is connected, where the browser tells. */
interface Navigator {
  readonly connection?: { saveData?: boolean; type?: string; effectiveType?: string };
}

/** Whatever somebody fills in. */
type Control = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

/** What a script looks for in its own page the build has put there; tests open every page. */
interface ParentNode {
  querySelector<K extends keyof HTMLElementTagNameMap>(selectors: K): HTMLElementTagNameMap[K];
  querySelector<E extends Element = HTMLElement>(selectors: string): E;
  querySelectorAll<K extends keyof HTMLElementTagNameMap>(selectors: K): NodeListOf<HTMLElementTagNameMap[K]>;
  querySelectorAll<E extends Element = HTMLElement>(selectors: string): NodeListOf<E>;
}

interface Element {
  closest<K extends keyof HTMLElementTagNameMap>(selectors: K): HTMLElementTagNameMap[K];
  closest<E extends Element = HTMLElement>(selectors: string): E;
}

/** An event of a page comes from one of its elements; what is typed or chosen, from what is filled in. */
type Heard<E, K> = E & { readonly target: K extends "input" | "change" ? Control : HTMLElement };

interface HTMLElement {
  addEventListener<K extends keyof HTMLElementEventMap>(
    type: K,
    hear: (event: Heard<HTMLElementEventMap[K], K>) => unknown,
    options?: boolean | AddEventListenerOptions,
  ): void;
}

interface HTMLFormElement {
  addEventListener<K extends keyof HTMLElementEventMap>(
    type: K,
    hear: (event: Heard<HTMLElementEventMap[K], K>) => unknown,
    options?: boolean | AddEventListenerOptions,
  ): void;
}

interface HTMLTableSectionElement {
  addEventListener<K extends keyof HTMLElementEventMap>(
    type: K,
    hear: (event: Heard<HTMLElementEventMap[K], K>) => unknown,
    options?: boolean | AddEventListenerOptions,
  ): void;
}

interface Document {
  addEventListener<K extends keyof DocumentEventMap>(
    type: K,
    hear: (event: Heard<DocumentEventMap[K], K>) => unknown,
    options?: boolean | AddEventListenerOptions,
  ): void;
  removeEventListener<K extends keyof DocumentEventMap>(
    type: K,
    hear: (event: Heard<DocumentEventMap[K], K>) => unknown,
  ): void;
}
