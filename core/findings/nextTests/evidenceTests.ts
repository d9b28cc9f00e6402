import { registry } from '../../registry.ts';
import type { Share } from '../../units/quantities.ts';
import { CALIBRATION } from '../calibration.ts';
import type { TestState } from './rankTests.ts';

/** A test that adds evidence, and why it is proposed. */
export interface EvidenceTest {
  readonly id: string;
  why(state: TestState): string;
  /** Chance that it puts a wrong decision right, or null where it adds nothing to what is there. */
  chance(state: TestState): Share | null;
}

/** Share of sound cars among those condemned whose leak the traces did not show; common practice, no source. */
const HIDDEN_LEAKS: Share = 0.03;

/**
 * Chance that a test puts a wrong decision right. One which answers rightly in a share of cases does by how much it is
 * better than the guess that can be made without it; one which speaks clearly in a share of cases, so that nothing known
 * before stands against it, does in that share of the cases in which the guess is wrong. Both shares are common practice,
 * no source.
 */
export function chanceOfTurning(probability: Share | null, rightly: Share, clearly: Share): Share {
  const p = probability ?? CALIBRATION.decided.beforeAnyTest;
  const guess = Math.max(p, 1 - p);
  return Math.max(0, rightly - guess, clearly * (1 - guess));
}

const turning = (state: TestState, rightly: Share, clearly: Share = 0): Share =>
  chanceOfTurning(state.probabilityNotStoring, rightly, clearly);

const has = (state: TestState, reason: string): boolean => state.reasons.some(({ id }) => id === reason);
const notMet = (state: TestState, condition: string): boolean =>
  state.conditions.some(({ id, met }) => id === condition && met === false);
const open = ({ finding }: TestState): boolean => finding === 'weak' || finding === 'cannotTell';

/** Tests that add evidence where no blocker forbids it. */
export const EVIDENCE_TESTS: readonly EvidenceTest[] = registry('evidence test', (one) => one.id, [
  {
    id: 'hold',
    why: () => 'Nothing recorded so far can be judged.',
    chance: (state) => (state.probabilityNotStoring === null ? turning(state, 0.95) : null),
  },
  {
    id: 'fuelCutCoast',
    why: () => 'No fuel cut with a return was read in this capture: it shows the storage from the other side.',
    chance: (state) => (has(state, 'recovery') ? null : turning(state, 0.93, 0.6)),
  },
  {
    id: 'fasterInstrument',
    why: () => 'The instrument was too slow to follow the waves.',
    chance: (state) => (notMet(state, 'samplingFast') ? turning(state, 0.95, 0.5) : null),
  },
  {
    id: 'holdLonger',
    why: () => 'The measures lie between the two; a longer hold narrows them.',
    chance: (state) => (open(state) && state.probabilityNotStoring !== null ? turning(state, 0.85) : null),
  },
  {
    id: 'leakCheck',
    why: () => 'Before a converter is bought, a leak is ruled out by hand: the traces alone cannot.',
    chance: (state) => (state.finding === 'notStoring' ? HIDDEN_LEAKS : null),
  },
  {
    id: 'thermal',
    why: () => 'No surface temperatures that tell anything were taken; a pair supports the finding or questions it.',
    chance: (state) => (has(state, 'thermal') ? null : turning(state, 0.65)),
  },
  {
    id: 'twin',
    why: () => 'A healthy twin under the same test shows what this engine should read.',
    chance: (state) =>
      open(state) && state.probabilityNotStoring !== null && !has(state, 'twin') ? turning(state, 0.85) : null,
  },
]);
