// 42 USC 7541 (Clean Air Act, section 207): emission warranty of specified major parts, 8 years or 80,000 miles, whichever
// first, from model year 1995 (check 2.09; periods read at uscode.elaws.us and in EPA420-F-96-020, list of parts from
// memory). Older cars 5 years or 50,000 miles by the EPA policy of 1986 (check 2.11).

import { describe, expect, test } from 'vitest';
import { lastDay, warrantyReminder } from '../../core/evidence/warranty.ts';

const car = { modelYear: 2016, mileage: { value: 79_900, unit: 'mi' }, firstSold: '2016-03-15' } as const;
const stateOf = (changed: Partial<Parameters<typeof warrantyReminder>[0]>, today = '2024-03-01') =>
  warrantyReminder({ ...car, ...changed }, today).state;

describe('42 USC 7541', () => {
  test('a car of 2016 first sold 2016-03-15 with 79,900 miles is inside until 2024-03-15 or 80,000 miles', () => {
    expect(stateOf({})).toBe('inside');
    expect(stateOf({}, '2024-03-15')).toBe('inside');
    expect(stateOf({}, '2024-03-16')).toBe('outside');
    expect(warrantyReminder(car, '2024-03-01').words).toContain(
      'until 2024-03-15 or 80\u00a0000 miles, whichever comes first',
    );
  });

  test('the same car at 80,001 miles is outside, at 80,000 it is inside', () => {
    expect(stateOf({ mileage: { value: 80_001, unit: 'mi' } })).toBe('outside');
    expect(stateOf({ mileage: { value: 80_000, unit: 'mi' } })).toBe('inside');
  });

  test('an unknown date of sale is "may still be covered", never expired', () => {
    for (const value of [10, 79_900, 80_001, 300_000]) {
      const reminder = warrantyReminder({ ...car, firstSold: null, mileage: { value, unit: 'mi' } }, '2026-11-24');
      expect(reminder.state).toBe('unknown');
      expect(reminder.words).toContain('may still be covered');
      expect(reminder.words).not.toMatch(/expired|ended/);
    }
  });

  test('an unknown mileage is outside only by date', () => {
    expect(stateOf({ mileage: null })).toBe('unknown');
    expect(stateOf({ mileage: null }, '2024-03-16')).toBe('outside');
    expect(warrantyReminder({ ...car, mileage: null }, '2024-03-16').words).toMatch(/^By date the /);
  });

  test('kilometres count by the international mile of 1.609344 km', () => {
    expect(stateOf({ mileage: { value: 128_747, unit: 'km' } })).toBe('inside');
    expect(stateOf({ mileage: { value: 128_748, unit: 'km' } })).toBe('outside');
  });

  test('a car before 1995 has 5 years or 50,000 miles; without a model year both terms must agree', () => {
    expect(
      stateOf({ modelYear: 1994, firstSold: '1994-05-01', mileage: { value: 50_001, unit: 'mi' } }, '1996-01-01'),
    ).toBe('outside');
    expect(
      stateOf({ modelYear: 1994, firstSold: '1994-05-01', mileage: { value: 49_000, unit: 'mi' } }, '1999-05-01'),
    ).toBe('inside');
    expect(stateOf({ modelYear: null, mileage: { value: 60_000, unit: 'mi' } })).toBe('unknown');
    expect(stateOf({ modelYear: null, mileage: { value: 90_000, unit: 'mi' } })).toBe('outside');
  });

  test('it never speaks as a lawyer', () => {
    for (const today of ['2020-01-01', '2030-01-01'])
      expect(warrantyReminder(car, today).words).not.toMatch(/entitled|must pay|legally/i);
  });

  test('29 February ends on 28 February where the year has none', () => {
    expect(lastDay('2016-02-29', 8)).toBe('2024-02-29');
    expect(lastDay('2016-02-29', 5)).toBe('2021-02-28');
    expect(lastDay('1996-02-29', 104)).toBe('2100-02-28');
  });
});
