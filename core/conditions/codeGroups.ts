/** Groups of trouble codes that stand before a catalyst finding (SAE J2012, check 1.52 and 1.53). */
export type CodeGroup = 'misfire' | 'frontSensor' | 'rearSensor' | 'mixture' | 'exchanged' | 'catalyst' | 'readiness';

const RULES: readonly (readonly [RegExp, CodeGroup])[] = [
  [/^P03(0\d|1[0-2])$/, 'misfire'],
  [/^P004[01]$/, 'exchanged'],
  [/^P04(2\d|3\d)$/, 'catalyst'],
  // Sensor 1 of either bank: heaters P0030 to P0032, P0050 to P0053 and P0059, circuits P0130 to P0135, P0150 to P0155.
  [/^P00(3[0-2]|5[0-3]|59)$/, 'frontSensor'],
  [/^P01(3[0-5]|5[0-5])$/, 'frontSensor'],
  [/^P219[5-8]$/, 'frontSensor'],
  // Shorted to its heater; a wideband sensor's circuits of current, reference and return (from memory).
  [/^P223[14]$/, 'frontSensor'],
  [/^P22(3[7-9]|4\d|5[0-6])$/, 'frontSensor'],
  [/^P2A0[03]$/, 'frontSensor'],
  [/^P00(3[6-8]|54|5[6-8]|60)$/, 'rearSensor'],
  [/^P01(3[6-9]|4[01]|5[6-9]|6[01])$/, 'rearSensor'],
  [/^P227[0-3]$/, 'rearSensor'],
  [/^P223[25]$/, 'rearSensor'],
  [/^P2A0[14]$/, 'rearSensor'],
  [/^P017[0-5]$/, 'mixture'],
  [/^P209[6-9]$/, 'mixture'],
  // Lean or rich off idle, at idle, at higher load (from memory).
  [/^P21(7[7-9]|80|8[7-9]|9[0-4])$/, 'mixture'],
];

/** The group a code belongs to, or null where it has no bearing on a converter. Codes in upper case. */
export function codeGroup(code: string): CodeGroup | null {
  for (const [pattern, group] of RULES) if (pattern.test(code)) return group;
  return null;
}

/** Codes of one group, in the order given. */
export function codesOf(codes: readonly string[], group: CodeGroup): string[] {
  return codes.filter((code) => codeGroup(code) === group);
}
