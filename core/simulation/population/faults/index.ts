import { registry } from '../../../registry.ts';
import { FRONT_FAULTS } from './frontFaults.ts';
import { GAS_FAULTS } from './gasFaults.ts';
import { HARNESS_FAULTS } from './harnessFaults.ts';
import type { MisleadingFault } from './misleadingFault.ts';
import { REAR_FAULTS } from './rearFaults.ts';
import { TEST_FAULTS } from './testFaults.ts';

/** Every fault that misleads, in the order in which the population walks through them. */
export const FAULTS: readonly MisleadingFault[] = registry('misleading fault', (fault) => fault.id, [
  ...FRONT_FAULTS,
  ...GAS_FAULTS,
  ...HARNESS_FAULTS,
  ...REAR_FAULTS,
  ...TEST_FAULTS,
]);
