import { describe, expect, it } from 'vitest';
import { assignRoles } from '../../../../../core/reading/naming/assignRoles.ts';
import type { Behaviour } from '../../../../../core/reading/naming/behaviour.ts';

const seen = (min: number, median: number, max: number): Behaviour => ({
  finite: 1000,
  min,
  median,
  max,
  distinct: 90,
});
const VOLTS = seen(0.05, 0.5, 0.9);

function assign(...columns: (readonly [name: string, behaviour: Behaviour, unit?: string])[]) {
  const named = columns.map(([name, , unit], index) => ({ index, name, unit: unit ?? null }));
  const behaviours = columns.map(([, behaviour]) => behaviour);
  return assignRoles(named, behaviours).map(({ role, bank, sensor, certain, questioned }) => ({
    role,
    bank,
    sensor,
    certain,
    questioned: questioned !== null,
  }));
}

describe('weighing columns against each other', () => {
  it('gives a role to the better of two columns', () => {
    const roles = assign(
      ['Absolute throttle position B', seen(10, 20, 60), '%'],
      ['Throttle position', seen(10, 20, 60), '%'],
      ['GPS speed', seen(0, 50, 90), 'km/h'],
      ['Vehicle speed', seen(0, 50, 90), 'km/h'],
    ).map(({ role }) => role);
    expect(roles).toEqual(['other', 'throttle', 'other', 'speed']);
  });

  // Check 1.06: byte FF is 99.21875 %; at the sensors behind the converter it stands for "not used in the trim" (SAE J1979).
  it('does not ask about the trim of a sensor that the fuel control does not use', () => {
    const unused = seen(99.2, 99.2, 99.2);
    const used = seen(-3, 0.5, 4);
    expect(
      assign(
        ['Oxygen sensor 2 Bank 1 short term fuel trim', unused, '%'],
        ['Short term fuel trim bank 1', used, '%'],
        ['Short term fuel trim bank 2', unused, '%'],
      ).map(({ role, questioned }) => [role, questioned]),
    ).toEqual([
      ['other', false],
      ['stft', false],
      ['other', true],
    ]);
  });

  it('prefers a column with values to one without', () => {
    const none = { finite: 0, min: 0, max: 0, median: 0, distinct: 0 };
    expect(assign(['Engine RPM', none, 'rpm'], ['RPM', seen(700, 900, 3000)]).map(({ role }) => role)).toEqual([
      'other',
      'rpm',
    ]);
  });

  it('keeps both banks and every sensor', () => {
    const roles = assign(['B1S1', VOLTS], ['B1S2', VOLTS], ['B1S3', VOLTS], ['B2S1', VOLTS], ['B2S2', VOLTS]);
    expect(roles.map(({ role, bank, sensor }) => `${role} ${bank} ${sensor}`)).toEqual([
      'upstreamO2 1 1',
      'downstreamO2 1 2',
      'downstreamO2 1 3',
      'upstreamO2 2 1',
      'downstreamO2 2 2',
    ]);
  });

  it('places two unnumbered sensors in the order of the file, and says that it is a guess', () => {
    const roles = assign(['O2 voltage', VOLTS], ['Oxygen sensor', VOLTS]);
    expect(roles).toMatchObject([
      { role: 'upstreamO2', sensor: 1, certain: false },
      { role: 'downstreamO2', sensor: 2, certain: false },
    ]);
  });

  it('gives an unnumbered sensor the place that is left beside a numbered one', () => {
    expect(assign(['O2 sensor', VOLTS], ['B1S1', VOLTS])[0]).toMatchObject({
      role: 'downstreamO2',
      sensor: 2,
      certain: false,
    });
    expect(assign(['O2 sensor', VOLTS], ['B1S2', VOLTS])[0]).toMatchObject({
      role: 'upstreamO2',
      sensor: 1,
      certain: false,
    });
  });

  it('keeps the voltage and the air ratio of one front sensor apart', () => {
    const roles = assign(['O2 B1S1', VOLTS, 'V'], ['Lambda B1S1', seen(0.9, 1, 1.2)]);
    expect(roles.map(({ role }) => role)).toEqual(['upstreamO2', 'upstreamLambda']);
  });
});

describe('a role that its own values contradict', () => {
  it.each([
    ['Coolant', VOLTS, undefined],
    ['Engine speed', seen(0, 0.4, 0.9), undefined],
    ['Engine speed', seen(-400, 0, 400), undefined],
    ['O2 B1S1', seen(12, 13.8, 14.4), 'V'],
    ['Short term fuel trim B1', seen(600, 800, 3000), '%'],
    ['Vehicle speed', seen(700, 2000, 5000), 'km/h'],
    ['Mass air flow', seen(1000, 2000, 9000), 'g/s'],
    ['Intake air temperature', seen(0.4, 0.5, 0.6), undefined],
  ] as const)('%s is taken away and questioned', (name, behaviour, unit) => {
    const column = unit === undefined ? ([name, behaviour] as const) : ([name, behaviour, unit] as const);
    expect(assign(column)[0]).toMatchObject({ role: 'other', certain: false, questioned: true });
  });

  it.each([
    ['Coolant', seen(-20, 40, 95), undefined],
    ['Coolant', seen(120, 190, 215), '°F'],
    ['Engine speed', seen(0, 0, 900), undefined],
    ['O2 B1S1', seen(50, 450, 930), 'mV'],
    ['O2 B1S2', seen(0, 0, 0), 'V'],
    ['Vehicle speed', seen(0, 0, 0), 'km/h'],
  ] as const)('%s with usual values is not', (name, behaviour, unit) => {
    expect(assign(unit === undefined ? [name, behaviour] : [name, behaviour, unit])[0]).toMatchObject({
      questioned: false,
    });
  });
});
