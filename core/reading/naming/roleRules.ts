import type { Role } from '../../capture/roles.ts';
import type { Quantity } from '../../units/unitTable.ts';
import type { Concept } from './concepts.ts';

/** By which ideas in its name a channel is taken for a role. Oxygen sensors have a file of their own. */
export interface RoleRule {
  readonly role: Role;
  /** At least one idea of every group. */
  readonly all: readonly (readonly Concept[])[];
  /** None of these. */
  readonly none: readonly Concept[];
  /** These make it a second choice where the file has a better one. */
  readonly worse: readonly Concept[];
  /** What its unit may measure. */
  readonly quantities: readonly Quantity[];
}

/** In the order in which they are tried where two fit equally well. */
export const ROLE_RULES: readonly RoleRule[] = [
  rule(
    'rpm',
    [['engineSpeed']],
    ['commanded', 'vehicle', 'pressure', 'otherMedium'],
    ['second'],
    ['rotation', 'count'],
  ),
  rule(
    'stft',
    [
      ['shortTrim', 'short'],
      ['trim', 'shortTrim'],
    ],
    ['commanded', 'load', 'airFlow', 'rear'],
    ['second'],
    ['share'],
  ),
  rule(
    'ltft',
    [
      ['longTrim', 'long'],
      ['trim', 'longTrim'],
    ],
    ['commanded', 'load', 'airFlow', 'rear'],
    ['second'],
    ['share'],
  ),
  rule(
    'catalystTemp',
    [['catalyst'], ['temperature']],
    ['commanded', 'oxygenSensor', 'coolant'],
    ['second', 'front', 'rear'],
    ['temperature'],
  ),
  rule(
    'coolant',
    [['coolant']],
    ['otherMedium', 'intakeAir', 'commanded', 'pressure', 'catalyst', 'oxygenSensor', 'engineSpeed'],
    ['second'],
    ['temperature'],
  ),
  rule(
    'intakeAir',
    [['intakeAir']],
    ['otherMedium', 'pressure', 'commanded', 'coolant', 'airFlow', 'catalyst'],
    ['second'],
    ['temperature'],
  ),
  rule(
    'maf',
    [['airFlow']],
    ['temperature', 'commanded', 'pressure', 'oxygenSensor', 'notAir', 'voltage'],
    ['second'],
    ['massFlow'],
  ),
  rule(
    'throttle',
    [['throttle']],
    ['pedal', 'commanded', 'engineSpeed', 'pressure', 'voltage'],
    ['second'],
    ['share', 'angle'],
  ),
  rule(
    'speed',
    [['speed', 'vehicle'], ['speed']],
    ['engineSpeed', 'commanded', 'otherMedium', 'engine'],
    ['second'],
    ['speed'],
  ),
  rule(
    'load',
    [['load']],
    [
      'engineSpeed',
      'pressure',
      'shortTrim',
      'longTrim',
      'trim',
      'notTime',
      'commanded',
      'airFlow',
      'temperature',
      'otherMedium',
      'current',
    ],
    ['second'],
    ['share'],
  ),
  rule(
    'fuelStatus',
    [['fuelStatus']],
    ['pressure', 'temperature', 'shortTrim', 'longTrim', 'voltage'],
    ['second'],
    ['count'],
  ),
];

function rule(
  role: Role,
  all: readonly (readonly Concept[])[],
  none: readonly Concept[],
  worse: readonly Concept[],
  quantities: readonly Quantity[],
): RoleRule {
  return { role, all, none, worse, quantities };
}
