// What trouble codes mean, in our words. The table is check 1.52: SAE J2012 / ISO 15031-6 as an open engine controller's
// source lists them. A code that is not here has a meaning all the same; the maker's service information has it.

/** Meanings by code. Oxygen sensors, their heaters, fuel trims, misfire and catalyst: what bears on a converter. */
const MEANINGS: ReadonlyMap<string, string> = new Map([
  ['P0030', 'heater control circuit, bank 1 sensor 1'],
  ['P0031', 'heater control circuit low, bank 1 sensor 1'],
  ['P0032', 'heater control circuit high, bank 1 sensor 1'],
  ['P0036', 'heater control circuit, bank 1 sensor 2'],
  ['P0037', 'heater control circuit low, bank 1 sensor 2'],
  ['P0038', 'heater control circuit high, bank 1 sensor 2'],
  ['P0040', 'upstream oxygen sensors exchanged between banks'],
  ['P0041', 'downstream oxygen sensors exchanged between banks'],
  ['P0042', 'heater control circuit, bank 1 sensor 3'],
  ['P0043', 'heater control circuit low, bank 1 sensor 3'],
  ['P0044', 'heater control circuit high, bank 1 sensor 3'],
  ['P0050', 'heater control circuit, bank 2 sensor 1'],
  ['P0051', 'heater control circuit low, bank 2 sensor 1'],
  ['P0052', 'heater control circuit high, bank 2 sensor 1'],
  ['P0053', 'heater resistance, bank 1 sensor 1'],
  ['P0054', 'heater resistance, bank 1 sensor 2'],
  ['P0055', 'heater resistance, bank 1 sensor 3'],
  ['P0056', 'heater control circuit, bank 2 sensor 2'],
  ['P0057', 'heater control circuit low, bank 2 sensor 2'],
  ['P0058', 'heater control circuit high, bank 2 sensor 2'],
  ['P0059', 'heater resistance, bank 2 sensor 1'],
  ['P0060', 'heater resistance, bank 2 sensor 2'],
  ['P0061', 'heater resistance, bank 2 sensor 3'],
  ['P0062', 'heater control circuit, bank 2 sensor 3'],
  ['P0063', 'heater control circuit low, bank 2 sensor 3'],
  ['P0064', 'heater control circuit high, bank 2 sensor 3'],
  ['P0130', 'oxygen sensor circuit, bank 1 sensor 1'],
  ['P0131', 'oxygen sensor circuit low voltage, bank 1 sensor 1'],
  ['P0132', 'oxygen sensor circuit high voltage, bank 1 sensor 1'],
  ['P0133', 'oxygen sensor circuit slow response, bank 1 sensor 1'],
  ['P0134', 'oxygen sensor circuit no activity, bank 1 sensor 1'],
  ['P0135', 'oxygen sensor heater circuit, bank 1 sensor 1'],
  ['P0136', 'oxygen sensor circuit, bank 1 sensor 2'],
  ['P0137', 'oxygen sensor circuit low voltage, bank 1 sensor 2'],
  ['P0138', 'oxygen sensor circuit high voltage, bank 1 sensor 2'],
  ['P0139', 'oxygen sensor circuit slow response, bank 1 sensor 2'],
  ['P0140', 'oxygen sensor circuit no activity, bank 1 sensor 2'],
  ['P0141', 'oxygen sensor heater circuit, bank 1 sensor 2'],
  ['P0142', 'oxygen sensor circuit, bank 1 sensor 3'],
  ['P0143', 'oxygen sensor circuit low voltage, bank 1 sensor 3'],
  ['P0144', 'oxygen sensor circuit high voltage, bank 1 sensor 3'],
  ['P0145', 'oxygen sensor circuit slow response, bank 1 sensor 3'],
  ['P0146', 'oxygen sensor circuit no activity, bank 1 sensor 3'],
  ['P0147', 'oxygen sensor heater circuit, bank 1 sensor 3'],
  ['P0150', 'oxygen sensor circuit, bank 2 sensor 1'],
  ['P0151', 'oxygen sensor circuit low voltage, bank 2 sensor 1'],
  ['P0152', 'oxygen sensor circuit high voltage, bank 2 sensor 1'],
  ['P0153', 'oxygen sensor circuit slow response, bank 2 sensor 1'],
  ['P0154', 'oxygen sensor circuit no activity, bank 2 sensor 1'],
  ['P0155', 'oxygen sensor heater circuit, bank 2 sensor 1'],
  ['P0156', 'oxygen sensor circuit, bank 2 sensor 2'],
  ['P0157', 'oxygen sensor circuit low voltage, bank 2 sensor 2'],
  ['P0158', 'oxygen sensor circuit high voltage, bank 2 sensor 2'],
  ['P0159', 'oxygen sensor circuit slow response, bank 2 sensor 2'],
  ['P0160', 'oxygen sensor circuit no activity, bank 2 sensor 2'],
  ['P0161', 'oxygen sensor heater circuit, bank 2 sensor 2'],
  ['P0162', 'oxygen sensor circuit, bank 2 sensor 3'],
  ['P0163', 'oxygen sensor circuit low voltage, bank 2 sensor 3'],
  ['P0164', 'oxygen sensor circuit high voltage, bank 2 sensor 3'],
  ['P0165', 'oxygen sensor circuit slow response, bank 2 sensor 3'],
  ['P0166', 'oxygen sensor circuit no activity, bank 2 sensor 3'],
  ['P0167', 'oxygen sensor heater circuit, bank 2 sensor 3'],
  ['P0170', 'fuel trim, bank 1'],
  ['P0171', 'mixture too lean, bank 1'],
  ['P0172', 'mixture too rich, bank 1'],
  ['P0173', 'fuel trim, bank 2'],
  ['P0174', 'mixture too lean, bank 2'],
  ['P0175', 'mixture too rich, bank 2'],
  ['P0300', 'misfire, random or several cylinders'],
  ['P0301', 'misfire, cylinder 1'],
  ['P0302', 'misfire, cylinder 2'],
  ['P0303', 'misfire, cylinder 3'],
  ['P0304', 'misfire, cylinder 4'],
  ['P0305', 'misfire, cylinder 5'],
  ['P0306', 'misfire, cylinder 6'],
  ['P0307', 'misfire, cylinder 7'],
  ['P0308', 'misfire, cylinder 8'],
  ['P0309', 'misfire, cylinder 9'],
  ['P0310', 'misfire, cylinder 10'],
  ['P0311', 'misfire, cylinder 11'],
  ['P0312', 'misfire, cylinder 12'],
  ['P0420', 'catalyst system efficiency below threshold, bank 1'],
  ['P0421', 'warm-up catalyst efficiency below threshold, bank 1'],
  ['P0422', 'main catalyst efficiency below threshold, bank 1'],
  ['P0423', 'heated catalyst efficiency below threshold, bank 1'],
  ['P0424', 'heated catalyst temperature below threshold, bank 1'],
  ['P0425', 'catalyst temperature sensor, bank 1'],
  ['P0426', 'catalyst temperature sensor range or performance, bank 1'],
  ['P0427', 'catalyst temperature sensor low, bank 1'],
  ['P0428', 'catalyst temperature sensor high, bank 1'],
  ['P0430', 'catalyst system efficiency below threshold, bank 2'],
  ['P0431', 'warm-up catalyst efficiency below threshold, bank 2'],
  ['P0432', 'main catalyst efficiency below threshold, bank 2'],
  ['P0433', 'heated catalyst efficiency below threshold, bank 2'],
  ['P0434', 'heated catalyst temperature below threshold, bank 2'],
  ['P0435', 'catalyst temperature sensor, bank 2'],
  ['P0436', 'catalyst temperature sensor range or performance, bank 2'],
  ['P0437', 'catalyst temperature sensor low, bank 2'],
  ['P0438', 'catalyst temperature sensor high, bank 2'],
  ['P2096', 'post-catalyst fuel trim too lean, bank 1'],
  ['P2097', 'post-catalyst fuel trim too rich, bank 1'],
  ['P2098', 'post-catalyst fuel trim too lean, bank 2'],
  ['P2099', 'post-catalyst fuel trim too rich, bank 2'],
  ['P2195', 'oxygen sensor signal stuck lean, bank 1 sensor 1'],
  ['P2196', 'oxygen sensor signal stuck rich, bank 1 sensor 1'],
  ['P2197', 'oxygen sensor signal stuck lean, bank 2 sensor 1'],
  ['P2198', 'oxygen sensor signal stuck rich, bank 2 sensor 1'],
  ['P2270', 'oxygen sensor signal stuck lean, bank 1 sensor 2'],
  ['P2271', 'oxygen sensor signal stuck rich, bank 1 sensor 2'],
  ['P2272', 'oxygen sensor signal stuck lean, bank 2 sensor 2'],
  ['P2273', 'oxygen sensor signal stuck rich, bank 2 sensor 2'],
  ['P2A00', 'oxygen sensor circuit range or performance, bank 1 sensor 1'],
  ['P2A01', 'oxygen sensor circuit range or performance, bank 1 sensor 2'],
  ['P2A03', 'oxygen sensor circuit range or performance, bank 2 sensor 1'],
  ['P2A04', 'oxygen sensor circuit range or performance, bank 2 sensor 2'],
]);

/**
 * What a code means, as part of a sentence; null where it is not in the table. P0420 names the system, P0421 the warm-up
 * (front) brick and P0422 the main brick: the first of them does not say which brick.
 */
export function troubleCodeMeaning(code: string): string | null {
  return MEANINGS.get(code) ?? null;
}

/** Every code in the table, ascending. */
export function knownTroubleCodes(): string[] {
  return [...MEANINGS.keys()];
}

/**
 * Who defines a code: the standard, or the maker. By SAE J2012 (from memory): digit 0 after the letter is the standard's,
 * 1 the maker's; P2 is the standard's, P30 to P33 the maker's, P34 to P3F the standard's; of B, C and U the digits 1 and
 * 2 are the maker's.
 */
export function definedBy(code: string): 'standard' | 'maker' {
  const [letter, first = '0', second = '0'] = code;
  if (letter !== 'P') return first === '1' || first === '2' ? 'maker' : 'standard';
  if (first === '1') return 'maker';
  return first === '3' && second < '4' ? 'maker' : 'standard';
}
