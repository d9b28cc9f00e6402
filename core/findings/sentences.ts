import type { Bank } from '../capture/roles.ts';
import type { Share } from '../units/quantities.ts';
import { counted, percent, startSentence } from '../words/numbers.ts';
import { blockerRule } from './blockerRules.ts';
import type { Blocker, Finding } from './finding.ts';

/** "Converter of bank 1", or "Converter" where the engine has one. */
export function converterName(bank: Bank): string {
  return bank === null ? 'Converter' : `Converter of bank ${bank}`;
}

const SAID: Readonly<Record<Finding, string>> = {
  storing: 'stores oxygen',
  weak: 'stores weakly',
  notStoring: 'does not store oxygen',
  cannotTell: 'cannot tell yet',
};

/**
 * "Converter of bank 1: does not store oxygen (97 %)." The per cent are the probability of what is said. While it cannot
 * be told, the blockers follow: "Converter of bank 1: cannot tell yet. The front sensor is lazy."
 */
export function findingSentence(
  bank: Bank,
  finding: Finding,
  probabilityNotStoring: Share | null,
  blockers: readonly Blocker[],
): string {
  const said = `${converterName(bank)}: ${SAID[finding]}`;
  if (finding === 'cannotTell') return [`${said}.`, ...blockers.map(({ id }) => blockerRule(id).words)].join(' ');
  if (probabilityNotStoring === null || finding === 'weak') return `${said}.`;
  return `${said} (${percent(finding === 'storing' ? 1 - probabilityNotStoring : probabilityNotStoring)}).`;
}

/** "Two windows, one thermal pair; no rule-out open." */
export function basisSentence(windows: number, thermal: number, blockers: readonly Blocker[]): string {
  const parts = [counted(windows, 'window'), ...(thermal > 0 ? [counted(thermal, 'thermal pair')] : [])];
  const open = blockers.length === 0 ? 'no rule-out open' : `${counted(blockers.length, 'rule-out')} open`;
  return startSentence(`${parts.join(', ')}; ${open}.`);
}
