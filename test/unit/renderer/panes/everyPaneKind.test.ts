import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ROLE_FACTS, ROLES } from '../../../../core/capture/roles.ts';
import { PANE_KINDS, paneKindOf } from '../../../../renderer/panes/index.ts';

it('draws every role in exactly one kind of pane', () => {
  for (const role of ROLES) expect(PANE_KINDS.filter((kind) => kind.roles.includes(role))).toHaveLength(1);
});

it('has no two kinds of one id', () => {
  expect(new Set(PANE_KINDS.map((kind) => kind.id)).size).toBe(PANE_KINDS.length);
});

it('puts front and rear sensor in one pane', () => {
  expect(paneKindOf('upstreamO2')).toBe(paneKindOf('downstreamO2'));
});

describe.each(PANE_KINDS.map((kind) => [kind.id, kind] as const))('%s', (_id, kind) => {
  it('has words without a unit in them, and one unit for all its roles', () => {
    expect(kind.words).toMatch(/^[A-Z][a-z -]+$/);
    expect(new Set(kind.roles.map((role) => ROLE_FACTS[role].unit)).size).toBe(1);
  });

  it('tells its channels apart where it draws more than one role', () => {
    const words = kind.roles.map((role) => kind.channelWords[role] ?? '');
    expect(new Set(words).size).toBe(kind.roles.length);
  });

  it('keeps its guides where the trade reads them inside its fixed scale', () => {
    const [low, high] = kind.quantityRange(0.2, 0.8);
    for (const guide of kind.guides) {
      const [from, to] = guide.kind === 'line' ? [guide.at, guide.at] : [guide.low, guide.high];
      expect(from).toBeGreaterThanOrEqual(low);
      expect(to).toBeLessThanOrEqual(high);
    }
  });

  it('has a fixed scale with an extent that holds every plausible value', () => {
    const [least, most] = ROLE_FACTS[kind.roles[0] ?? 'other'].plausible;
    const [from, to] = [Math.max(least, -1e6), Math.min(most, 1e6)];
    const plausible = fc.integer({ min: 0, max: 10_000 }).map((share) => from + ((to - from) * share) / 10_000);
    fc.assert(
      fc.property(plausible, plausible, (one, other) => {
        const [low, high] = kind.quantityRange(Math.min(one, other), Math.max(one, other));
        expect(high).toBeGreaterThan(low);
        // A scale that is fixed to the quantity leaves out nothing that was recorded.
        expect(low).toBeLessThanOrEqual(Math.min(one, other) + 1e-9 * Math.abs(one));
        expect(high).toBeGreaterThanOrEqual(Math.max(one, other) - 1e-9 * Math.abs(other));
      }),
    );
  });
});

it('reads oxygen sensors from 0 to 1 V', () => {
  const [low, high] = paneKindOf('upstreamO2').quantityRange(0.05, 0.92);
  expect([low, high].map((volts) => Number(volts.toFixed(1)))).toEqual([-0, 1]);
  expect(high - low).toBeLessThan(1.1);
});
