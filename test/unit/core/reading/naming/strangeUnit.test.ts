import { describe, expect, it, test } from 'vitest';
import { strangeUnitIn } from '../../../../../core/reading/naming/strangeUnit.ts';
import { readText } from '../../../../support/readText.ts';

describe('what stands in brackets at the end of a heading', () => {
  it.each([
    ['Coolant [furlong]', 'furlong'],
    ['Coolant temp (Xy)', 'Xy'],
    ['O2 B1S1 { vlt }', 'vlt'],
  ])('may be meant as a unit: %s', (heading, inside) => expect(strangeUnitIn(heading)).toBe(inside));

  it.each(['Coolant', 'O2 (Bank 1, Sensor 2)', 'O2 (B1S1)', 'O2 B1S1 (voltage)', 'Speed ()', 'Coolant (--)'])(
    'or is none: %s',
    (heading) => expect(strangeUnitIn(heading)).toBeNull(),
  );
});

test('a unit that is not known is told, with what the values were taken as', async () => {
  const { capture } = await readText('Time (s),Coolant temp [xyz],O2 B1S1 (V)\n0,80,0.1\n1,81,0.8\n2,82,0.1\n');
  const told = capture.warnings.filter(({ id }) => id === 'unitGuessed').map(({ detail }) => detail);
  expect(told).toEqual(['“Coolant temp [xyz]”: “xyz” is no unit that is known; the values were taken as °C.']);
});
