/** Now, as a clock on this wall shows it: 2026-11-25T14:03:07+01:00. */
export function now() {
  const moment = new Date();
  const offset = -moment.getTimezoneOffset();
  /** @param {number} number */
  const two = (number) => String(Math.trunc(Math.abs(number))).padStart(2, "0");
  const local = new Date(moment.getTime() + offset * 60_000).toISOString().slice(0, 19);
  return `${local}${offset < 0 ? "-" : "+"}${two(offset / 60)}:${two(offset % 60)}`;
}
