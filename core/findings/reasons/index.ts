import { registry } from '../../registry.ts';
import { catalystCode } from './catalystCode.ts';
import { fastSwing } from './fastSwing.ts';
import { deadFits, deadFitsByLambda, goodMisfits, goodMisfitsByLambda } from './modelFits.ts';
import { rearSwing } from './rearSwing.ts';
import type { ReasonRule } from './reasonRule.ts';
import { recovery } from './recovery.ts';
import { twin } from './twin.ts';

/** Every reason the additive model knows; temperatures join where a bank is judged. */
export const REASON_RULES: readonly ReasonRule[] = registry('reason', (rule) => rule.id, [
  deadFits,
  deadFitsByLambda,
  goodMisfits,
  goodMisfitsByLambda,
  fastSwing,
  rearSwing,
  recovery,
  twin,
  catalystCode,
]);
