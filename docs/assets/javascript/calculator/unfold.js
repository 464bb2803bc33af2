/**
 * Open every fold that something lies in.
 * @param {HTMLElement} place
 */
export function unfold(place) {
  for (let at = place.parentElement; at; at = at.parentElement) if (at instanceof HTMLDetailsElement) at.open = true;
}
