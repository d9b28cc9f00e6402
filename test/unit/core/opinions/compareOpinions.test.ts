import { describe, expect, it } from 'vitest';
import { compareOpinions, shareOfUnion } from '../../../../core/opinions/compareOpinions.ts';
import type { CoreSaid, Opinion, RestingWindow } from '../../../../core/record/opinionSchema.ts';
import { anOpinion } from '../../../support/signedChain.ts';

const LINK = { given: '0'.repeat(64), previous: null };
const said = (change: Partial<CoreSaid> = {}): CoreSaid => ({
  bank: 1,
  coreVersion: '0.1.0',
  finding: 'notStoring',
  probabilityNotStoring: 0.97,
  conditions: { engineWarm: true, speedSteady: true },
  measures: { switchRatio: 0.8, lagS: null, amplitudeRatio: 0.5 },
  ...change,
});
const window = (startS: number, endS: number, change: Partial<RestingWindow> = {}): RestingWindow => ({
  captureSha256: 'a'.repeat(64),
  startS,
  endS,
  bank: 1,
  kind: 'hold',
  coreSaid: [said()],
  ...change,
});
const opinion = (change: Partial<Opinion>): Opinion => ({ ...anOpinion('o'), ...LINK, ...change });
const compared = (first: Partial<Opinion>, second: Partial<Opinion>) =>
  compareOpinions(opinion(first), opinion(second));

describe('windows of two opinions', () => {
  it('overlap by the share of their union', () => {
    expect(shareOfUnion(window(0, 60), window(0, 60))).toBe(1);
    // 40 s shared, 0 to 80 s between them.
    expect(shareOfUnion(window(0, 60), window(20, 80))).toBe(0.5);
    expect(shareOfUnion(window(0, 10), window(10, 20))).toBe(0);
    expect(shareOfUnion(window(0, 10), window(50, 60))).toBe(0);
  });

  it('never match across captures or banks', () => {
    expect(shareOfUnion(window(0, 60), window(0, 60, { captureSha256: 'b'.repeat(64) }))).toBe(0);
    expect(shareOfUnion(window(0, 60), window(0, 60, { bank: 2 }))).toBe(0);
  });

  it('are paired one to one, the best overlap first', () => {
    const { pairs, onlyFirst, onlySecond } = compared(
      { windows: [window(0, 60), window(5, 60), window(200, 230)] },
      { windows: [window(5, 60), window(0, 50)] },
    );
    expect(pairs.map(({ first, second }) => [first.startS, second.startS])).toEqual([
      [0, 0],
      [5, 5],
    ]);
    expect(onlyFirst.map(({ startS }) => startS)).toEqual([200]);
    expect(onlySecond).toEqual([]);
  });

  it('under half of the union are two windows', () => {
    const { pairs, differs } = compared({ windows: [window(0, 60)] }, { windows: [window(21, 81)] });
    expect(pairs).toEqual([]);
    expect(differs).toEqual({ kind: 'window' });
  });
});

describe('what differs first', () => {
  it('is the windows, whatever else differs', () => {
    const two = compared({ windows: [window(0, 60)], finding: 'weak' }, { windows: [], finding: 'storing' });
    expect(two.differs).toEqual({ kind: 'window' });
  });

  it('is the condition where the core gave another finding for the same window', () => {
    const other = said({ finding: 'cannotTell', conditions: { engineWarm: true, speedSteady: false } });
    expect(compared({ windows: [window(0, 60)] }, { windows: [window(0, 58, { coreSaid: [other] })] }).differs).toEqual(
      { kind: 'condition', id: 'speedSteady', first: true, second: false },
    );
  });

  it('is the measure that moved most where every condition is alike', () => {
    const measures = { switchRatio: 0.7, lagS: null, amplitudeRatio: 0.1 };
    expect(
      compared(
        { windows: [window(0, 60)] },
        { windows: [window(0, 58, { coreSaid: [said({ finding: 'weak', measures })] })] },
      ).differs,
    ).toEqual({ kind: 'measure', id: 'amplitudeRatio', first: 0.5, second: 0.1 });
  });

  it('a measure that only one of them has counts as wholly other', () => {
    const measures = { switchRatio: 0.7, lagS: 0.4, amplitudeRatio: 0.1 };
    expect(
      compared(
        { windows: [window(0, 60)] },
        { windows: [window(0, 60, { coreSaid: [said({ finding: 'weak', measures })] })] },
      ).differs,
    ).toEqual({ kind: 'measure', id: 'lagS', first: null, second: 0.4 });
  });

  it('is the version of the core where all its numbers are alike', () => {
    const newer = said({ finding: 'weak', coreVersion: '0.2.0' });
    expect(compared({ windows: [window(0, 60)] }, { windows: [window(0, 60, { coreSaid: [newer] })] }).differs).toEqual(
      { kind: 'core', first: '0.1.0', second: '0.2.0' },
    );
  });

  it('is the judgement where windows and core agree, then how sure they are, then nothing', () => {
    const windows = [window(0, 60)];
    expect(compared({ windows }, { windows, finding: 'cannotTell' }).differs).toEqual({ kind: 'judgement' });
    expect(compared({ windows }, { windows, confidence: 55 }).differs).toEqual({ kind: 'confidence' });
    expect(compared({ windows }, { windows }).differs).toEqual({ kind: 'nothing' });
  });
});
