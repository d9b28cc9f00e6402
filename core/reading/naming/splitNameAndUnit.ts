import { findUnit } from '../../units/findUnit.ts';

/** A column's heading parted into its name and the unit it gives, null where it gives none. */
export interface NameAndUnit {
  readonly name: string;
  readonly unit: string | null;
}

const LAST_BRACKET = /^(.*?)\s*[([{<]([^()[\]{}<>]{0,24})[)\]}>]\s*$/;
const LAST_WORD = /^(.+?)(?:\s*[,;:]\s*|\s+-\s+|\s+in\s+|_in_|_|\s+|\/)([^\s_,;:]{1,14})$/i;
/** Units that are also letters or words: taken only after a sign or where the whole name needs one. */
const SHORT =
  /^(?:[a-z]|1|-+|#|n|na|la|af|std|bar|day|count|counts|ratio|status|state|raw|none|text|bit|grad|mile|foot|min|deg|lambda|afr|torr|rpm|text|enum|bool|phi|us)$/i;

/**
 * Parts "Coolant temp (°C)", "Engine RPM [RPM]", "O2 Voltage (Bank 1, Sensor 1) [V]", "maf_g/s", "Speed, km/h" and
 * "ENGINE_RPM ()". A bracket that holds no unit stays in the name.
 */
export function splitNameAndUnit(heading: string): NameAndUnit {
  const text = heading.replace(/\s+/g, ' ').trim();
  const bracket = LAST_BRACKET.exec(text);
  if (bracket?.[1] !== undefined && bracket[2] !== undefined) {
    const inside = bracket[2].trim();
    if (inside === '' && bracket[1] !== '') return { name: bracket[1], unit: null };
    if (bracket[1] !== '' && findUnit(inside) !== null) return { name: bracket[1], unit: inside };
    return middleBracket(text);
  }
  const word = LAST_WORD.exec(text);
  if (
    word?.[1] !== undefined &&
    word[2] !== undefined &&
    !/\bper$/i.test(word[1]) &&
    !SHORT.test(word[2]) &&
    findUnit(word[2]) !== null
  ) {
    return { name: word[1].trim(), unit: word[2] };
  }
  return quotient(text) ?? middleBracket(text);
}

/** "U_lambda/V", "T_coolant/K", "m_air/kg/h": a quantity over its unit, as ISO 80000 writes headings; not "A/F". */
function quotient(text: string): NameAndUnit | null {
  const match = /^(.+?)\/([^\s_,;:]{1,14})$/.exec(text);
  if (match?.[1] === undefined || match[2] === undefined || findUnit(text) !== null) return null;
  if (SHORT.test(match[2]) && !/^[VAK]$/.test(match[2])) return null;
  return findUnit(match[2]) === null ? null : { name: match[1].trim(), unit: match[2] };
}

/** A unit in a bracket that is not the last thing: "Coolant (°C) temp", "Lambda [V] B1S1". */
function middleBracket(text: string): NameAndUnit {
  for (const match of text.matchAll(/[([{<]([^()[\]{}<>]{1,24})[)\]}>]/g)) {
    const inside = (match[1] ?? '').trim();
    const unit = findUnit(inside);
    if (unit === null || unit.quantity === 'count' || (/^\d/.test(inside) && unit.quantity !== 'rotation')) continue;
    const name = `${text.slice(0, match.index)} ${text.slice(match.index + match[0].length)}`
      .replace(/\s+/g, ' ')
      .trim();
    if (name !== '') return { name, unit: inside };
  }
  return { name: text, unit: null };
}

/**
 * The unit a name ends in as a bare letter or short word ("Coolant temp C", "o2_v", "speed mph"), for a channel whose
 * name has already said what it measures. null where the last word is no unit.
 */
export function shortUnitAtEnd(name: string): NameAndUnit | null {
  const match = /^(.+?)[\s_,-]+([A-Za-z%°µ/]{1,6})$/.exec(name);
  if (match?.[1] === undefined || match[2] === undefined || findUnit(match[2]) === null) return null;
  if (/\bper$/i.test(match[1])) return null;
  return { name: match[1].trim(), unit: match[2] };
}
