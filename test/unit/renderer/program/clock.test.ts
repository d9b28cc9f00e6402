import { expect, it } from 'vitest';
import { instantWithOffset } from '../../../../renderer/program/clock.ts';

it('writes the local time with its offset, and names the same moment', () => {
  const date = new Date(Date.UTC(2026, 10, 24, 21, 54, 7));
  const words = instantWithOffset(date);
  expect(words).toMatch(/^2026-11-2[45]T\d\d:\d\d:07(Z|[+-]\d\d:\d\d)$/);
  expect(new Date(words).getTime()).toBe(date.getTime());
});

it.each([
  [-90, '+01:30', '2026-11-24T23:24:07'],
  [300, '-05:00', '2026-11-24T16:54:07'],
])('knows an offset of %d min', (offset, written, local) => {
  const date = new Date(Date.UTC(2026, 10, 24, 21, 54, 7));
  date.getTimezoneOffset = () => offset;
  expect(instantWithOffset(date)).toBe(`${local}${written}`);
});
