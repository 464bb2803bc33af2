// Put into every page that is measured: it types like a reader, and sees when the answer has been drawn.
{
  /**
   * @template {Element} E
   * @param {string} selector @param {ParentNode} [within]
   * @returns {E}
   */
  const found = (selector, within = document) => {
    /** @type {E | null} */
    const element = within.querySelector(selector);
    if (!element) throw new Error(`no ${selector} on this page`);
    return element;
  };

  window.bench = {
    /** Resolves when anything of a calculator's answer, its drawing at least, has been replaced and laid out. */
    redrawn(name) {
      /** @type {HTMLElement} */
      const answer = found(`section.calculator[data-calculator="${name}"] .answer`);
      return new Promise((resolve) => {
        new MutationObserver((_, observer) => {
          observer.disconnect();
          answer.getBoundingClientRect(); // makes the browser lay it out now
          resolve(performance.now());
        }).observe(answer, { childList: true, characterData: true, subtree: true });
      });
    },
    /** Type a text into a blank: resolves with the milliseconds until the answer to it stands there. */
    async type(name, field, text) {
      /** @type {HTMLInputElement} */
      const blank = found(`section.calculator[data-calculator="${name}"] [name="${field}"]`);
      const redrawn = bench.redrawn(name);
      const began = performance.now();
      blank.value = text;
      blank.dispatchEvent(new Event("input", { bubbles: true }));
      return (await redrawn) - began;
    },
    /** Type many texts, each once the last has been answered. */
    async typeAll(name, field, texts) {
      const took = [];
      for (const text of texts) {
        took.push(await bench.type(name, field, text));
        await new Promise((resolve) => setTimeout(resolve, 5));
      }
      return took;
    },
  };
}
