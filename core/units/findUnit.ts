import { UNIT_TABLE, type UnitRow } from './unitTable.ts';

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

/** Whether two spellings name the same unit. */
export function sameUnit(a: string, b: string): boolean {
  const first = findUnit(a);
  return first !== null && first === findUnit(b);
}

function stripBrackets(text: string): string {
  const match = /^[[({<](.*)[\])}>]$/.exec(text);
  return match?.[1] === undefined ? text : match[1].trim();
}

/** Lower case without blanks and dots; both micro signs alike; degree signs that lost their character set mended. */
function looseForm(text: string): string {
  return text
    .replace(/Â(?=[°º])/g, '')
    .replace(/^\uFFFD(?=[CFKcfk]$)/, '°')
    .replace(/μ/g, 'µ')
    .toLowerCase()
    .replace(/[\s.]/g, '');
}
