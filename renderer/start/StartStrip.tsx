/** A strip of recorder paper over the start page: a front sensor that switches and a rear sensor that stays calm. */
export function StartStrip() {
  return null;
}
