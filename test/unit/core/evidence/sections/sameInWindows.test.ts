import { describe, expect, it } from 'vitest';
import { buildSheet } from '../../../../../core/evidence/buildSheet.ts';
import { html } from '../../../../../core/evidence/formats/html.ts';
import { sameInAll, without } from '../../../../../core/evidence/sections/sameInWindows.ts';
import type { WindowScore } from '../../../../../core/findings/finding.ts';
import { sheetInput } from '../../../../support/sheetInput.ts';

const [kept] = sheetInput().score.windows;
if (kept === undefined) throw new Error('the sheet has a window');
const first = kept.score;
const other: WindowScore = {
  ...first,
  conditions: first.conditions.map((one) => (one.id === 'engineWarm' ? { ...one, detail: 'Coolant 90 °C.' } : one)),
};
const ids = (list: readonly { readonly id: string }[]) => list.map(({ id }) => id);

describe('what windows share', () => {
  it('is what has the same state and words in all of them', () => {
    const same = sameInAll([first, other]);
    expect(ids(same.conditions)).toEqual(['speedSteady', 'readinessKnown']);
    expect(ids(same.missing)).toEqual(['lagS']);
    expect(ids(without(same.conditions, other.conditions))).toEqual(['engineWarm']);
  });

  it('is no condition with the same words and another state, nor a measure that is missing for another reason', () => {
    const turned: WindowScore = {
      ...first,
      conditions: first.conditions.map((one) => ({ ...one, met: one.met === null ? false : !one.met })),
      measures: first.measures.map((one) => (one.value === null ? { ...one, missing: 'There is no edge.' } : one)),
    };
    expect(sameInAll([first, turned])).toEqual({ conditions: [], missing: [] });
  });

  it('is asked only where there is something to ask', () => {
    const snap = { ...other, conditions: first.conditions.slice(0, 1) };
    expect(ids(sameInAll([first, first, snap]).conditions)).toEqual(ids(first.conditions));
  });

  it('is nothing of a single window', () => {
    expect(sameInAll([first])).toEqual({ conditions: [], missing: [] });
    expect(sameInAll([])).toEqual({ conditions: [], missing: [] });
  });
});

it('stands once on the sheet, before the windows of its capture', () => {
  const input = sheetInput();
  const [window] = Object.values(input.record.windows);
  if (window === undefined) throw new Error('the record has a window');
  const record = { ...input.record, windows: { ...input.record.windows, second: { ...window, id: 'second' } } };
  const windows = [...input.score.windows, { ...kept, windowId: 'second', score: other }];
  const page = html.write(buildSheet({ ...input, record, score: { ...input.score, windows } }));
  const times = (text: string) => page.split(text).length - 1;
  expect(times('The same in every window of')).toBe(1);
  expect(times('The rate of 3 Hz is too low to time an edge.')).toBe(1);
  expect(times('Readiness was not recorded.')).toBe(1);
  expect([times('Coolant 88 to 91 °C.'), times('Coolant 90 °C.')]).toEqual([1, 1]);
});
