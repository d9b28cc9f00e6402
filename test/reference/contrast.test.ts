// Contrast ratios: black on white 21 : 1 and #767676 on white 4.54 : 1 as WCAG 2.2 and its commentaries publish them; the
// rest of values/wcag-contrast.csv computed from the formula in WCAG 2.2, "relative luminance" and "contrast ratio".

import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { contrast, laidOver } from '../support/contrast.ts';

const rows = readFileSync(new URL('values/wcag-contrast.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(','));

it.each(rows)('%s on %s is %s : 1', (foreground, background, ratio, tolerance) => {
  const found = contrast(foreground ?? '', background ?? '');
  expect(Math.abs(found - Number(ratio))).toBeLessThanOrEqual(Number(tolerance));
});

it('lays a half-clear colour half over its ground', () => {
  expect(laidOver('#00000080', '#ffffff')).toBe('#7f7f7f');
  expect(laidOver('#123456', '#ffffff')).toBe('#123456');
  expect(laidOver('#12345600', '#abcdef')).toBe('#abcdef');
});
