import { describe, expect, test } from 'vitest';
import { judgeVehicle } from '../../../../core/findings/judgeVehicle.ts';
import type { VehicleEvidence } from '../../../../core/findings/vehicleEvidence.ts';
import type { Reading, RecordWindow } from '../../../../core/record/schema.ts';
import { suggestWindows } from '../../../../core/windows/suggestWindows.ts';
import { captureOf } from '../../../support/drawTrace.ts';
import { sampleCapture } from '../../../support/sampleCapture.ts';

const BEFORE = await sampleCapture('van-before.csv');
const AFTER = await sampleCapture('van-after.csv');
const TWIN = await sampleCapture('van-twin.csv');

type Given = VehicleEvidence['captures'][number];

function given(capture: Given['capture'], captureId: string, kind: Given['kind']): Given {
  const windows = suggestWindows(capture)
    .filter((window) => window.kind === 'hold')
    .map(
      (window, i): RecordWindow => ({ ...window, id: `${captureId}-${i}`, captureId, name: '', origin: 'accepted' }),
    );
  return { capture, captureId, kind, windows };
}

function reading(id: string, inlet: number, outlet: number, more: Partial<Reading> = {}): Reading {
  return {
    id,
    bank: 1,
    brick: 1,
    inlet: { value: inlet, unit: 'F' },
    outlet: { value: outlet, unit: 'F' },
    rpm: 2300,
    emissivity: 0.9,
    takenAt: '2024-03-01T10:00:00Z',
    captureId: null,
    ...more,
  };
}

const nothing: VehicleEvidence = { captures: [], readings: [], troubleCodes: [], rearSensor: 'unknown' };

describe('judgeVehicle', () => {
  test('says in one line what is known, how sure, and on what it rests', () => {
    const { sentence } = judgeVehicle({
      ...nothing,
      captures: [given(BEFORE, 'a', 'before')],
      readings: [reading('r', 514, 484)],
      troubleCodes: ['P0420'],
    });
    expect(sentence).toMatch(
      /^Converter of bank 1: does not store oxygen \(\d\d %\)\. Two windows, one thermal pair; no rule-out open\.$/,
    );
  });

  test('keeps before and after apart, and a twin out of both', () => {
    const score = judgeVehicle({
      ...nothing,
      captures: [given(BEFORE, 'a', 'before'), given(AFTER, 'b', 'after'), given(TWIN, 'c', 'knownGood')],
      troubleCodes: ['P0420'],
    });
    expect(score.before.verdict.finding).toBe('notStoring');
    expect(score.after?.verdict.finding).toBe('storing');
    expect(score.sentence).toMatch(
      /^After the repair: converter of bank 1: stores oxygen .* Before: converter of bank 1/,
    );
    expect(score.windows.map(({ kind }) => kind)).toContain('knownGood');
  });

  test('a healthy twin under the same test joins the evidence, once', () => {
    const with_ = judgeVehicle({ ...nothing, captures: [given(BEFORE, 'a', 'before'), given(TWIN, 'c', 'knownGood')] });
    const reasons = with_.before.verdict.reasons.filter(({ id }) => id === 'twin');
    expect(reasons).toHaveLength(1);
    expect(reasons[0]?.for).toBe('notStoring');
  });

  test('the same windows twice are no more proof than once', () => {
    const one = given(AFTER, 'a', 'before');
    const single = judgeVehicle({ ...nothing, captures: [one] });
    const double = judgeVehicle({ ...nothing, captures: [{ ...one, windows: [...one.windows, ...one.windows] }] });
    const weights = ({ before }: typeof single) =>
      before.verdict.reasons.map(({ id, weight }) => [id, weight.toFixed(1)]);
    const besideModel = (one: typeof single) => weights(one).filter(([id]) => !/^(dead|good)/.test(String(id)));
    expect(besideModel(double)).toEqual(besideModel(single));
  });

  test('a reading belongs to the capture that ran while it was taken', () => {
    const score = judgeVehicle({
      ...nothing,
      captures: [given(BEFORE, 'a', 'before'), given(AFTER, 'b', 'after')],
      readings: [reading('r1', 514, 484, { captureId: 'a' }), reading('r2', 500, 590, { captureId: 'b' })],
    });
    const thermal = (stage: typeof score.before | null) => stage?.verdict.reasons.find(({ id }) => id === 'thermal');
    expect(thermal(score.before)?.for).toBe('notStoring');
    expect(thermal(score.after)?.for).toBe('storing');
  });

  test('nothing recorded: cannot tell, and the next test is to record', () => {
    const { before, after, sentence } = judgeVehicle(nothing);
    expect(before.verdict.finding).toBe('cannotTell');
    expect(before.verdict.nextTests[0]?.id).toBe('hold');
    expect(after).toBeNull();
    expect(sentence).toContain('cannot tell yet');
  });

  test('a dear converter makes the leak check worth its minutes, a cheap one does not', () => {
    const ask = (converterPrice: number) =>
      judgeVehicle({
        ...nothing,
        captures: [given(BEFORE, 'a', 'before')],
        troubleCodes: ['P0420'],
        costs: { converterPrice, labourHour: 100 },
      }).before.verdict.nextTests.map(({ id }) => id);
    expect(ask(6000)).toContain('leakCheck');
    expect(ask(100)).not.toContain('leakCheck');
  });
});

describe('a vehicle without a rear sensor', () => {
  const hold = captureOf([
    { role: 'rpm', rateHz: 2, seconds: 200, values: (t) => (t < 20 ? 800 : 2300) },
    { role: 'coolant', rateHz: 1, seconds: 200, values: () => 91 },
    { role: 'upstreamO2', bank: 1, rateHz: 10, seconds: 200, values: (t) => (Math.sin(9 * t) > 0 ? 0.8 : 0.1) },
  ]);
  const judge = (inlet: number, outlet: number, rearSensor: 'yes' | 'no') =>
    judgeVehicle({
      ...nothing,
      captures: [given(hold, 'a', 'before')],
      readings: [reading('r', inlet, outlet, { emissivity: null })],
      rearSensor,
    }).before.verdict;

  test('is judged by temperature, and the sentence says what that is worth', () => {
    const working = judge(290, 390, 'no');
    expect(working.finding).toBe('storing');
    expect(working.sentence).toContain('weak proof');
    const dead = judge(500, 384, 'no');
    expect(dead.finding).toBe('notStoring');
    expect(dead.probabilityNotStoring).toBeLessThan(0.9);
    expect(dead.sentence).toContain('weak proof');
  });

  test('in between nothing is said, and the next test is named', () => {
    const between = judge(400, 410, 'no');
    expect(between.finding).toBe('cannotTell');
    expect(between.nextTests.map(({ id }) => id)).toContain('gasBeforeAfter');
  });

  test('but one that has a rear sensor is not: it is asked to be recorded', () => {
    const has = judge(500, 384, 'yes');
    expect(has.finding).toBe('cannotTell');
    expect(has.blockers.map(({ id }) => id)).toContain('noRearSensor');
  });
});

describe('a drive without the sensors that tell', () => {
  const drive = (...rest: Parameters<typeof captureOf>[0]) =>
    captureOf([{ role: 'rpm', rateHz: 2, seconds: 300, values: (t) => 900 + 600 * Math.sin(t / 9) }, ...rest]);
  const blockersOf = (capture: ReturnType<typeof captureOf>) => {
    const captures = [{ capture, captureId: 'a', kind: 'before' as const, windows: [] }];
    const { blockers, nextTests } = judgeVehicle({ ...nothing, captures }).before.verdict;
    return { ids: blockers.map(({ id }) => id), next: nextTests[0]?.id };
  };

  test('says so before anything else, also where no window could be scored', () => {
    expect(blockersOf(drive())).toEqual({ ids: ['noRearSensor', 'noFrontSensor', 'noWindow'], next: 'recordRear' });
    const front = {
      role: 'upstreamO2',
      rateHz: 2,
      seconds: 300,
      values: (t: number) => 0.45 + 0.4 * Math.sin(t),
    } as const;
    expect(blockersOf(drive({ ...front, bank: 1 })).ids).toEqual(['noRearSensor', 'noWindow']);
    expect(blockersOf(drive(front, { ...front, role: 'downstreamO2' })).ids).toEqual(['noWindow']);
  });
});
