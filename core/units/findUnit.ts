import { UNIT_TABLE, type UnitRow } from './unitTable.ts';

/** Signs that stand where a degree sign was lost, by a wrong character set or by a keyboard without one. */
const LOST_DEGREE = /^(?:┬░|(?:Ã‚)?Â?[°º˚]|[\uFFFD*'`´’¡?·^~])\s?(?=[CFK]$)/i;
/** "oC", and ø for the ° of older systems; "of" and "OK" are words. */
const LETTER_FOR_DEGREE = /^[oø]\s?(?=[CF]$)/;

/** Exact spellings first: "mV" and "MV", "ms" and "Ms" are not the same thing, "RPM" and "rpm" are. */
const EXACT = new Map<string, UnitRow>();
const LOOSE = new Map<string, UnitRow>();

for (const unit of UNIT_TABLE) {
  for (const spelling of [unit.symbol, ...unit.spellings]) {
    const loose = looseForm(spelling);
    if (!EXACT.has(spelling)) EXACT.set(spelling, unit);
    if (!LOOSE.has(loose)) LOOSE.set(loose, unit);
  }
}

/**
 * The row of a unit as a stranger may have typed it: with brackets, in any case, with blanks, with the usual damage of a
 * wrong character set before a degree sign. Null for a text that is no unit; the empty text is no unit.
 */
export function findUnit(text: string): UnitRow | null {
  const bare = stripBrackets(text.trim());
  if (bare === '' || bare.length > 24) return null;
  return EXACT.get(bare) ?? LOOSE.get(looseForm(bare)) ?? null;
}

/** The symbol of the base unit of what a spelling measures, or null where it names no unit. */
export function baseUnitOf(text: string): string | null {
  const quantity = findUnit(text)?.quantity;
  const base = UNIT_TABLE.find((row) => row.quantity === quantity && row.times === row.over && row.zero === 0);
  return base?.symbol ?? null;
}

/** Whether two spellings name the same unit. */
export function sameUnit(a: string, b: string): boolean {
  const first = findUnit(a);
  return first !== null && first === findUnit(b);
}

function stripBrackets(text: string): string {
  const match = /^[[({<](.*)[\])}>]$/.exec(text);
  return match?.[1] === undefined ? text : match[1].trim();
}

/** Lower case without blanks, dots and low lines; both micro signs alike; degree signs that were lost mended. */
function looseForm(text: string): string {
  return text
    .replace(LOST_DEGREE, '°')
    .replace(LETTER_FOR_DEGREE, '°')
    .replace(/Â(?=[°º])/g, '')
    .replace(/μ/g, 'µ')
    .toLowerCase()
    .replace(/[\s._]/g, '');
}
