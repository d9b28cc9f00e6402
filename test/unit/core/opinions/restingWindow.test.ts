import { describe, expect, it } from 'vitest';
import { restingWindow } from '../../../../core/opinions/restingWindow.ts';
import { restingWindowSchema } from '../../../../core/record/opinionSchema.ts';
import { keptRecord } from '../../../support/keptRecord.ts';
import { sheetInput } from '../../../support/sheetInput.ts';

const record = keptRecord();
const { w1 } = record.windows;
if (w1 === undefined) throw new Error('the kept record has a window');

describe('a window that an opinion rests on', () => {
  it('names its capture by content and keeps what the core says now', () => {
    const { score } = sheetInput();
    const resting = restingWindow(w1, record, score, '9.9.9');
    expect(resting).toEqual({
      captureSha256: record.captures.c1?.sha256,
      startS: 61.2,
      endS: 121.2,
      bank: 1,
      kind: 'hold',
      coreSaid: [
        {
          bank: 1,
          coreVersion: '9.9.9',
          finding: 'notStoring',
          probabilityNotStoring: 0.95,
          conditions: { engineWarm: true, speedSteady: false, readinessKnown: null },
          measures: { switchRatio: 0.8234567, downstreamMeanV: 0.4512, lagS: null },
        },
      ],
    });
    expect(restingWindowSchema.safeParse(resting).success).toBe(true);
  });

  it('keeps the finding of the record, with its own version, where the capture is not open', () => {
    expect(restingWindow(w1, record, null, '9.9.9')?.coreSaid).toEqual([
      {
        bank: 1,
        coreVersion: '0.1.0',
        finding: 'notStoring',
        probabilityNotStoring: 0.97,
        conditions: {},
        measures: {},
      },
    ]);
    expect(restingWindow(w1, { ...record, findings: {} }, null, '9.9.9')?.coreSaid).toEqual([]);
  });

  it('is none where the record does not have its capture', () => {
    expect(restingWindow({ ...w1, captureId: 'gone' }, record, null, '9.9.9')).toBeNull();
  });
});
