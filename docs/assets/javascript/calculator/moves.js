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

const THREAD = 6; // [drawing units] beyond the middle of the layers that a row goes through; its ends lie as far beside
const ALIKE = 0.05; // [drawing units] places nearer than this are one

/** @typedef {[x: number, y: number]} Place */

/** @param {string} [told] @returns {Place[]} */
const places = (told = "") => told.split(" ").map((each) => /** @type {Place} */ (each.split(",").map(Number)));

/** @param {Place} one @param {Place} other @param {number} share @returns {Place} */
const between = ([x1, y1], [x2, y2], share) => [x1 + (x2 - x1) * share, y1 + (y2 - y1) * share];

/**
 * The length and the direction of every stretch; one without length goes on as the one before it.
 * @param {Place[]} path
 */
function stretches(path) {
  const found = path.slice(1).map(([x, y], index) => {
    const [dx, dy] = [x - path[index][0], y - path[index][1]];
    return { long: Math.hypot(dx, dy), way: Math.atan2(dy, dx) };
  });
  let way = found.find(({ long }) => long > ALIKE)?.way ?? 0;
  for (const each of found) way = each.way = each.long > ALIKE ? each.way : way;
  return found;
}

/**
 * A strip on its way: every stretch has turned so far, and all hang together with the place that stays
 * (calculators/drawing/played_section.py).
 * @param {SVGGElement} strip @param {number} share
 */
function onItsWay({ dataset }, share) {
  const [before, after] = [places(dataset.before), places(dataset.after)];
  const [turn, holds] = [Number(dataset.turn), Number(dataset.holds)];
  const [begins, ends] = [stretches(before), stretches(after)];
  const turned = begins.map(({ way }, index) => ends[index].way - way);
  // from the place that stays outwards, each about as far as the one before it, since cloth bends in rounds
  for (const [first, step] of [
    [holds, 1],
    [holds - 1, -1],
  ]) {
    let last = dataset.about ? turn * Math.PI : 0;
    for (let at = first; at >= 0 && at < turned.length; at += step) {
      const off = turned[at] - last + Math.PI;
      last = turned[at] = last + off - 2 * Math.PI * Math.floor(off / (2 * Math.PI)) - Math.PI;
    }
  }
  const steps = begins.map(({ long, way }, index) => {
    const far = long + (ends[index].long - long) * share;
    const on = way + share * turned[index];
    return /** @type {Place} */ ([far * Math.cos(on), far * Math.sin(on)]);
  });
  const path = [...before];
  path[holds] = held(before[holds], after[holds], dataset.about, turn, share);
  for (let at = holds; at < steps.length; at++) path[at + 1] = [path[at][0] + steps[at][0], path[at][1] + steps[at][1]];
  for (let at = holds; at > 0; at--) path[at - 1] = [path[at][0] - steps[at - 1][0], path[at][1] - steps[at - 1][1]];
  return path;
}

/**
 * @param {Place} before @param {Place} after @param {string | undefined} about where all of it turns
 * @param {number} turn @param {number} share
 */
function held(before, after, about, turn, share) {
  if (!about) return between(before, after, share);
  const [[x, y]] = places(about);
  const [at, up] = between(before, [2 * x - after[0], 2 * y - after[1]], share);
  const [cos, sin] = [Math.cos(turn * Math.PI * share), Math.sin(turn * Math.PI * share)];
  return /** @type {Place} */ ([x + (at - x) * cos - (up - y) * sin, y + (at - x) * sin + (up - y) * cos]);
}

/** The direction of a path at one of its places. @param {Place[]} path @param {number} at @returns {Place} */
function along(path, at) {
  const [one, other] = [path[Math.max(at - 1, 0)], path[Math.min(at + 1, path.length - 1)]];
  const long = Math.hypot(other[0] - one[0], other[1] - one[1]) || 1;
  return [(other[0] - one[0]) / long, (other[1] - one[1]) / long];
}

/** @param {Place[]} path */
const written = (path) => path.map((place) => place.map((each) => each.toFixed(1)).join()).join(" ");

/**
 * An edge cut through of which a part turns about a fold.
 * @param {SVGGElement} part @param {number} share how far the step is on its way, 0 to 1
 */
export function bend(part, share) {
  /** @type {Place[][]} */
  const paths = [];
  for (const each of /** @type {Iterable<SVGGElement>} */ (part.children)) {
    const { on, through, after, before } = each.dataset;
    if (each.matches(".strip")) {
      const path = onItsWay(each, share);
      paths.push(path);
      for (const line of /** @type {Iterable<SVGGElement>} */ (each.children)) {
        const off = Number(line.dataset.off ?? 0);
        const beside = path.map(([x, y], at) => {
          const [ux, uy] = off ? along(path, at) : [0, 0];
          return /** @type {Place} */ ([x - uy * off, y + ux * off]);
        });
        line.setAttribute("points", written(beside));
      }
    } else if (on) {
      const [strip, at] = on.split(" ").map(Number);
      const [x, y] = paths[strip][at];
      const [ux, uy] = at ? along(paths[strip], at).map((each) => -each) : along(paths[strip], 0);
      each.setAttribute("transform", `matrix(${ux} ${uy} ${-uy} ${ux} ${x} ${y})`);
    } else if (through) {
      const [strip, at, other, to] = through.split(" ").map(Number);
      const [high, low] = [paths[strip][at], paths[other][to]];
      const far = Math.hypot(low[0] - high[0], low[1] - high[1]);
      const [tx, ty] = along(paths[strip], at);
      const [ux, uy] = far > 1 ? [(low[0] - high[0]) / far, (low[1] - high[1]) / far] : [-ty, tx];
      const [top, foot] = [-THREAD, THREAD].map((off, index) => {
        const [x, y] = index ? low : high;
        return /** @type {Place} */ ([x + ux * off, y + uy * off]);
      });
      const side = 5;
      each.setAttribute(
        "points",
        written([[top[0] - uy * side, top[1] + ux * side], top, foot, [foot[0] + uy * side, foot[1] - ux * side]]),
      );
    } else {
      const [x, y] = between(places(before)[0], places(after)[0], share);
      each.setAttribute("cx", x.toFixed(1));
      each.setAttribute("cy", y.toFixed(1));
    }
  }
  part.classList.add("on");
}
