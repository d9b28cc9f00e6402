import type { Random } from '../random.ts';
import type { CasePlan } from './planCase.ts';

/** Codes as people bring them: P0420 or P0430 with most cars, whatever is true; the fault's own in a third of cases. */
export function drawCodes(plan: CasePlan, random: Random): string[] {
  const codes: string[] = [];
  if (random.chance(0.7)) codes.push(plan.bank === 2 ? 'P0430' : 'P0420');
  const own = plan.fault?.codes ?? [];
  const misfire = plan.fault?.id === 'misfire';
  if (own.length > 0 && random.chance(misfire ? 0.7 : 0.33)) codes.push(bankCode(random.pick(own), plan.bank));
  return codes;
}

/** The same fault on bank 2 has its own number (SAE J2012, check 1.52). */
const SECOND_BANK: Readonly<Record<string, string>> = {
  P0131: 'P0151',
  P0133: 'P0153',
  P0137: 'P0157',
  P0139: 'P0159',
  P0140: 'P0160',
  P0171: 'P0174',
  P0172: 'P0175',
};

function bankCode(code: string, bank: 1 | 2): string {
  return bank === 2 ? (SECOND_BANK[code] ?? code) : code;
}
