import type { BankVerdict, Finding, Verdict } from './finding.ts';

/** From what weighs most for the vehicle to what weighs least. */
const WORST_FIRST: readonly Finding[] = ['notStoring', 'weak', 'cannotTell', 'storing'];

/** The verdict over all banks: the worst that is known, whose sentence names its bank. Needs at least one. */
export function judgeAll(banks: readonly [BankVerdict, ...BankVerdict[]]): Verdict {
  let worst = banks[0];
  for (const bank of banks) if (rank(bank) < rank(worst)) worst = bank;
  const { bank: _bank, ...verdict } = worst;
  const others = banks.filter((bank) => bank !== worst).map(({ sentence }) => sentence);
  return { ...verdict, sentence: [verdict.sentence, ...others].join(' ') };
}

function rank({ finding, probabilityNotStoring }: BankVerdict): number {
  return WORST_FIRST.indexOf(finding) - (probabilityNotStoring ?? 0) / 2;
}
