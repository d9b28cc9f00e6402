import { registry } from '../../registry.ts';
import { cruise } from './cruise.ts';
import { fuelCut } from './fuelCut.ts';
import { hold } from './hold.ts';
import { idle } from './idle.ts';
import { snap } from './snap.ts';
import type { WindowKindRule } from './windowKindRule.ts';

/** Kinds of windows the core can find, the most telling first. */
export const WINDOW_KIND_RULES: readonly WindowKindRule[] = registry('kind of window', (rule) => rule.kind, [
  hold,
  cruise,
  idle,
  snap,
  fuelCut,
]);
