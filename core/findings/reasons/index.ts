import { registry } from '../../registry.ts';
import { catalystCode } from './catalystCode.ts';
import { fastSwing } from './fastSwing.ts';
import { path } from './path.ts';
import { rearSwing } from './rearSwing.ts';
import type { ReasonRule } from './reasonRule.ts';
import { switching } from './switching.ts';

/** Every reason the additive model knows. */
export const REASON_RULES: readonly ReasonRule[] = registry('reason', (rule) => rule.id, [
  switching,
  fastSwing,
  path,
  rearSwing,
  catalystCode,
]);
