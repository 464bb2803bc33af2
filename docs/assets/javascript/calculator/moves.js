/** How what is drawn of a fold lies on the sheet while it moves. */

/**
 * A flap turned about its line: along the line it stays, across it is drawn shorter by the cosine, and lifted by the
 * sine. Its front is seen until it stands on edge, then its rear.
 * @param {SVGGElement} part what stays, and both faces of the flap, as they lie before and after
 * @param {number} share how far the step is on its way, 0 to 1
 * @param {number} lift of its width, how far up the sheet it is drawn when it stands upright
 */
export function fold(part, share, lift) {
  const { line = "", opens, under } = part.dataset;
  const [x, y, ux, uy] = line.split(" ").map(Number);
  const half = Math.PI * (opens === undefined ? share : 1 - share);
  // where a step across the line, on the side where the flap lies before, is drawn
  const across = [-uy * Math.cos(half), ux * Math.cos(half) - (under === undefined ? 1 : -1) * lift * Math.sin(half)];
  const isFront = ux * across[1] - uy * across[0] > 0;
  for (const face of part.children) {
    if (face.matches(".stays")) continue;
    const isShown = face.matches(".front") === isFront;
    face.classList.toggle("away", !isShown);
    if (isShown) face.setAttribute("transform", laid(x, y, ux, uy, isFront ? across : [-across[0], -across[1]]));
  }
  part.classList.add("on");
}

/**
 * What leaves a line as it is, and draws what is across it another way.
 * @param {number} x @param {number} y of the line @param {number} ux @param {number} uy @param {number[]} across
 */
function laid(x, y, ux, uy, [nx, ny]) {
  const [a, b, c, d] = [ux * ux - uy * nx, ux * uy - uy * ny, ux * uy + ux * nx, uy * uy + ux * ny];
  return `matrix(${[a, b, c, d, x - a * x - c * y, y - b * x - d * y].map((each) => each.toFixed(4)).join(" ")})`;
}

/**
 * The whole work turned over about an upright or a level line.
 * @param {SVGGElement} part @param {SVGGElement} before @param {SVGGElement} after @param {number} share
 */
export function turn(part, before, after, share) {
  const at = Number(part.dataset.about);
  const wide = Math.cos(Math.PI * share);
  const step = wide > 0 ? before : after;
  const [across, off] = [Math.abs(wide), at * (1 - Math.abs(wide))];
  const matrix = part.dataset.upright === "1" ? `${across} 0 0 1 ${off} 0` : `1 0 0 ${across} 0 ${off}`;
  step.setAttribute("transform", `matrix(${matrix}) translate(0 ${step.dataset.down})`);
  step.classList.add("on");
}
