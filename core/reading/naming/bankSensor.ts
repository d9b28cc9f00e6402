import type { Bank } from '../../capture/roles.ts';

/** Which bank and which sensor along the exhaust a name speaks of; null where it does not say. */
export interface BankSensor {
  readonly bank: Bank;
  readonly sensor: number | null;
  /** The name without what was understood, so that its digits are not read twice. */
  readonly rest: string;
}

const GAP = '[\\s_\\-#:.,/()\\[\\]]{0,3}';
const NUMBER_SIGN = `(?:n[ro°º]?\\.?)?${GAP}`;
const BANK_WORD = `(?:banks?|banc|bancada|banco|bancal|bnk|bk|zylinderbank|zyl\\.?bank|rang[ée]e|rampe|bloc)`;
const SENSOR_WORD = `(?:sensors?|lambdasonden?|sonden?|sondas?|capteurs?|sens|snsr|sns|probe|sonde|s)`;

/** Both in one code, bank first: B1S2, B1-S2, Bank1Sensor2, bank 1 / sensor 2, Bank 1 Sonde 2. */
const BANK_THEN_SENSOR = new RegExp(
  `(?<![a-z])(?:${BANK_WORD}|b)${GAP}${NUMBER_SIGN}([12])${GAP}(?:o2${GAP}|lambda${GAP})?${SENSOR_WORD}${GAP}${NUMBER_SIGN}([1-4])(?!\\d)`,
);
/** Sensor first: S2B1, Sensor 2 Bank 1, Sonda 1 Banco 2, Sonde 2, Bank 1, sensor 1 of bank 2. */
const SENSOR_THEN_BANK = new RegExp(
  `(?<![a-z])${SENSOR_WORD}${GAP}${NUMBER_SIGN}([1-4])${GAP}(?:of${GAP}|(?:de|del|du|der|von)${GAP}(?:la${GAP})?)?(?:${BANK_WORD}|b)${GAP}${NUMBER_SIGN}([12])(?!\\d)`,
);
/** Two digits after the sensor's abbreviation: O2S11, HO2S12, O2 21, o2_sensor_1_2, O2 Sensor 1-1, (1,2), 1/2. */
const PAIR_AFTER_OXYGEN = new RegExp(
  `(?:h?o2s?|[hu]?ego|eq[_ ]?rat|oxygen|lambda|sonde|sonda|sauerstoff[a-z]*|a/?f)${GAP}(?:sensor|sens|sonde|sonda|voltage|volt|v|s|b)?${GAP}([12])${GAP}(?:s${GAP})?([1-4])(?!\\d|\\.\\d)`,
);
const PAIR_ALONE = /^[\s([]*([12])[\s_\-/:,]*([1-4])[\s)\]]*$/;
const BANK_ALONE = new RegExp(`(?<![a-z])(?:${BANK_WORD}${GAP}${NUMBER_SIGN}|b[_-]?)([12])(?!\\d)`);
/** The 2 of "O2 bank A" is no bank's number. */
const BANK_BEFORE = /(?<![\do])([12])(?:st|nd|er|ère|ª|\.)?[\s_-]?(?:bank|banc|banco)\b/;
const SENSOR_ALONE = new RegExp(`(?<![a-z])(?:${SENSOR_WORD}|h?o2s)${GAP}${NUMBER_SIGN}([1-8])(?!\\d)`);
const TRIM_NUMBER =
  /(?:ft|trim|korrektur|correction|ajuste|term|terme|plazo)[\s_\-#]{0,2}b?([12])(?:[\s_-]?s?([1-4]))?(?!\d)/;
const LAST_NUMBER = /(?:^|[^\d.])([1-8])\s*(?:\)|\]|$|(?=[\s_]+(?:voltage|volt|spannung|tension|voltaje)))/;

/** Temperatures of converters are numbered like sensors: CATEMP11. */
const CATALYST_PAIR = /(?:temp|temperature)[\s_]*([12])[\s_]?([1-4])$/;

/**
 * Bank and sensor in a name, in the forms in which the trade writes them. `lower` is the name in lower case, its unit
 * taken off. `single` says what one digit by itself is the number of: a sensor (names of oxygen sensors), a bank (trims),
 * or neither.
 */
export function bankSensorIn(lower: string, single: 'sensor' | 'bank' | 'none' = 'none'): BankSensor {
  const both = BANK_THEN_SENSOR.exec(lower);
  if (both !== null) return found(lower, both[0], both[1], both[2]);
  const turned = SENSOR_THEN_BANK.exec(lower);
  if (turned !== null) return found(lower, turned[0], turned[2], turned[1]);
  const bank = BANK_ALONE.exec(lower) ?? BANK_BEFORE.exec(lower);
  const sensor = SENSOR_ALONE.exec(lower);
  if (bank === null && single !== 'bank') {
    const pair = PAIR_AFTER_OXYGEN.exec(lower) ?? PAIR_ALONE.exec(lower);
    if (pair !== null) return found(lower, pair[0], pair[1], pair[2]);
  }
  if (bank !== null || sensor !== null) return alone(lower, bank, sensor);
  if (single === 'bank') {
    const trim = TRIM_NUMBER.exec(lower);
    if (trim !== null) return found(lower, trim[0], trim[1], trim[2]);
  }
  const catalyst = CATALYST_PAIR.exec(lower);
  if (catalyst !== null) return found(lower, catalyst[0], catalyst[1], catalyst[2]);
  const last = single === 'none' ? null : LAST_NUMBER.exec(withoutO2(lower));
  if (last?.[1] !== undefined) return numbered(lower, last[0], Number(last[1]), single === 'bank');
  return { bank: null, sensor: null, rest: lower };
}

function alone(lower: string, bank: RegExpExecArray | null, sensor: RegExpExecArray | null): BankSensor {
  const rest = without(without(lower, bank?.[0]), sensor?.[0]);
  const number = sensor?.[1] === undefined ? null : Number(sensor[1]);
  if (bank === null && number !== null) return numbered(lower, sensor?.[0] ?? '', number, false);
  // With the bank named, a lone last digit is the sensor's: "O2 Bank 1 - 2".
  const after = number === null ? LAST_NUMBER.exec(withoutO2(rest))?.[1] : undefined;
  return { bank: bankOf(bank?.[1]), sensor: number ?? (after === undefined ? null : Number(after)), rest };
}

/** Sensors counted through both banks: 5 and up are those of bank 2, as the data items of SAE J1979 order them. */
function numbered(lower: string, part: string, number: number, isBank: boolean): BankSensor {
  const rest = without(lower, part);
  if (isBank) return { bank: bankOf(String(number)), sensor: null, rest };
  if (number > 4) return { bank: 2, sensor: number - 4, rest };
  return { bank: null, sensor: number, rest };
}

function found(lower: string, part: string, bank: string | undefined, sensor: string | undefined): BankSensor {
  return { bank: bankOf(bank), sensor: sensor === undefined ? null : Number(sensor), rest: without(lower, part) };
}

/** The 2 of O2 is no sensor's number. */
function withoutO2(text: string): string {
  return text.replace(/h?o2s?/g, ' ');
}

function without(text: string, part: string | undefined): string {
  return part === undefined || part === '' ? text : text.replace(part, ' ');
}

function bankOf(digit: string | undefined): Bank {
  return digit === '1' ? 1 : digit === '2' ? 2 : null;
}
