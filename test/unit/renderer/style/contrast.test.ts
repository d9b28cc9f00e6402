// Contrast of every text and line colour against every ground it is used on, by the formula of WCAG 2.2 (relative
// luminance, contrast ratio). The two ratios checked first are published: black on white 21, #767676 on white 4.54.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

type Theme = 'light' | 'dark';

const table = readFileSync(new URL('../../../../renderer/style/tokens.css', import.meta.url), 'utf8');

function tokensOf(theme: Theme): Map<string, string> {
  const opening = theme === 'light' ? ':root {' : ":root[data-theme='dark'] {";
  const from = table.indexOf(opening);
  const block = table.slice(from, table.indexOf('\n}', from));
  return new Map([...block.matchAll(/--([a-z-]+): (#[0-9a-f]{6});/g)].map((m) => [m[1] ?? '', m[2] ?? '']));
}

function luminance(hex: string): number {
  const channel = (at: number): number => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
}

function contrast(one: string, other: string): number {
  const [high, low] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return ((high ?? 0) + 0.05) / ((low ?? 0) + 0.05);
}

/** ink, ground, least ratio. Measures and findings 7, other words 4.5, lines that carry meaning 3. */
const PAIRS: readonly (readonly [string, string, number])[] = [
  ...['paper', 'raised', 'sunk', 'chosen'].flatMap(
    (ground) =>
      [
        ['ink', ground, 7],
        ['ink-soft', ground, 4.5],
        ['accent', ground, 4.5],
        ['accent-deep', ground, 4.5],
        ['alert', ground, 4.5],
        ['ring', ground, 3],
        ['edge', ground, 3],
      ] as const,
  ),
  ...['storing', 'weak', 'not-storing', 'cannot-tell'].flatMap(
    (finding) =>
      [
        [finding, 'paper', 7],
        [finding, 'chosen', 4.5],
      ] as const,
  ),
  ['ink-soft', 'paper', 7], // units and intervals of measures
  ['ink', 'alert-wash', 7],
  ['alert', 'alert-wash', 4.5],
  ['accent', 'alert-wash', 4.5],
  ['on-accent', 'accent', 4.5],
  ['on-accent', 'accent-deep', 4.5],
];

describe('the formula', () => {
  it.each([
    ['#000000', '#ffffff', 21],
    ['#767676', '#ffffff', 4.54],
    ['#ffffff', '#121212', 18.73],
  ])('gives the published ratio of %s on %s', (one, other, published) => {
    expect(contrast(one, other)).toBeCloseTo(published, 1);
  });
});

describe.each(['light', 'dark'] as const)('the %s theme', (theme) => {
  const tokens = tokensOf(theme);

  it.each(PAIRS)('%s on %s reaches %d : 1', (ink, ground, least) => {
    const one = tokens.get(ink);
    const other = tokens.get(ground);
    if (one === undefined || other === undefined) throw new Error(`tokens.css lacks ${ink} or ${ground} for ${theme}`);
    expect(contrast(one, other)).toBeGreaterThanOrEqual(least);
  });
});

it('gives every colour in both themes', () => {
  expect([...tokensOf('dark').keys()].sort()).toEqual([...tokensOf('light').keys()].sort());
});
