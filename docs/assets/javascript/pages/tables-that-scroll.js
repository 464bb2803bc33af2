/** A table in a box that scrolls is a stop of the keyboard only where it does scroll: seen to as the key is pressed. */

document.addEventListener(
  "keydown",
  ({ key }) => {
    if (key !== "Tab") return;
    for (const box of document.querySelectorAll("article .wide[tabindex]"))
      box.tabIndex = box.scrollWidth > box.clientWidth + 1 ? 0 : -1;
  },
  { capture: true },
);
