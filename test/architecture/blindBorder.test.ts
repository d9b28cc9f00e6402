// What a blind reading hides is cut away at two places, and nothing that shows, copies or hands over gets behind them.

import { describe, expect, test } from 'vitest';
import { readText, sourceFiles } from './sourceTree.ts';

const RENDERER = sourceFiles().filter((path) => path.startsWith('renderer/'));

/** Ways to the whole record and to the whole score, and who goes them: what saves, scores, signs and takes over. */
const BORDERS: readonly { readonly what: string; readonly way: RegExp; readonly allowed: readonly string[] }[] = [
  {
    what: 'the whole record',
    way: /\bwholeRecordOf\b|\bhistory\??\.record\b/,
    allowed: [
      'renderer/actions/keepFindings.ts',
      'renderer/actions/keepScoring.ts',
      'renderer/actions/opinions.ts',
      'renderer/actions/receiveBundles.ts',
      'renderer/program/saver.ts',
      'renderer/state/recordStore.ts',
    ],
  },
  {
    what: 'the whole score',
    way: /\bwholeScore\b/,
    allowed: [
      'renderer/actions/keepFindings.ts',
      'renderer/actions/keepModelTraces.ts',
      'renderer/actions/keepOfferScore.ts',
      'renderer/actions/keepScoring.ts',
      'renderer/actions/openVehicle.ts',
      'renderer/actions/opinions.ts',
      'renderer/program/program.ts',
    ],
  },
];

describe('the border of a blind reading', () => {
  test.each(BORDERS)('$what is reached only by what does not show it', ({ way, allowed }) => {
    expect(RENDERER.filter((path) => way.test(readText(path)))).toEqual(allowed);
  });

  test('a screen that reached behind it would be found', () => {
    const screen = 'const record = useStore(program.record, wholeRecordOf);\nuseStore(program.wholeScore);';
    for (const { way } of BORDERS) expect(way.test(screen)).toBe(true);
    expect(BORDERS[0]?.way.test('state.history?.record')).toBe(true);
  });
});
