import { registry } from '../../registry.ts';
import type { Share } from '../../units/quantities.ts';
import type { TestState } from './rankTests.ts';

/** A test that adds evidence, how often it answers rightly by itself, and why it is proposed. */
export interface EvidenceTest {
  readonly id: string;
  why(state: TestState): string;
  /** Share of cases in which it answers rightly, or null where it adds nothing to what is there. Common practice, no source. */
  worth(state: TestState): Share | null;
}

const has = (state: TestState, reason: string): boolean => state.reasons.some(({ id }) => id === reason);
const notMet = (state: TestState, condition: string): boolean =>
  state.conditions.some(({ id, met }) => id === condition && met === false);
const open = ({ finding }: TestState): boolean => finding === 'weak' || finding === 'cannotTell';

/** Tests that add evidence where no blocker forbids it. */
export const EVIDENCE_TESTS: readonly EvidenceTest[] = registry('evidence test', (one) => one.id, [
  {
    id: 'hold',
    why: () => 'Nothing recorded so far can be judged.',
    worth: (state) => (state.probabilityNotStoring === null ? 0.95 : null),
  },
  {
    id: 'fuelCutCoast',
    why: () => 'No fuel cut with a return is in this capture: it shows the storage from the other side.',
    worth: (state) => (has(state, 'recovery') ? null : 0.93),
  },
  {
    id: 'fasterInstrument',
    why: () => 'The instrument was too slow to follow the waves.',
    worth: (state) => (notMet(state, 'samplingFast') ? 0.95 : null),
  },
  {
    id: 'holdLonger',
    why: () => 'The measures lie between the two; a longer hold narrows them.',
    worth: (state) => (open(state) && state.probabilityNotStoring !== null ? 0.85 : null),
  },
  {
    id: 'leakCheck',
    why: () => 'Before a converter is bought, a leak is ruled out by hand: the traces alone cannot.',
    worth: (state) => (state.finding === 'notStoring' ? 0.995 : null),
  },
  {
    id: 'thermal',
    why: () => 'No surface temperatures were taken; a pair supports the finding or questions it.',
    worth: (state) => (has(state, 'thermal') ? null : 0.65),
  },
  {
    id: 'twin',
    why: () => 'A healthy twin under the same test shows what this engine should read.',
    worth: (state) => (open(state) && state.probabilityNotStoring !== null && !has(state, 'twin') ? 0.85 : null),
  },
]);
