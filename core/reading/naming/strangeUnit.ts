import { conceptsIn, plainWords } from './concepts.ts';

const BRACKET_AT_END = /[([{<]\s*([^()[\]{}<>]{1,24}?)\s*[)\]}>]\s*$/;

/**
 * What a heading writes in brackets at its end where a unit usually stands, for a heading in which no unit was found:
 * "Coolant [furlong]" gives "furlong". null where there is no such bracket, and where it says which sensor or bank, or
 * anything else that names know: "(Bank 1, Sensor 2)", "(B1S1)", "(voltage)".
 */
export function strangeUnitIn(heading: string): string | null {
  const inside = BRACKET_AT_END.exec(heading)?.[1];
  if (inside === undefined || /\d/.test(inside) || !/\p{L}/u.test(inside)) return null;
  return conceptsIn(plainWords(inside)).size > 0 ? null : inside;
}
