// The stable JSON of the headless command, contract 1: keys, types and units as other programs rely on them.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildCommandReport, buildDescribeReport } from '../../../../core/contract/buildCommandReport.ts';
import { commandReportSchema, describeReportSchema } from '../../../../core/contract/commandReport.ts';
import type { CaptureScore } from '../../../../core/findings/finding.ts';
import { scoreCapture } from '../../../../core/scoreCapture.ts';
import { CORE_VERSION } from '../../../../core/version.ts';
import { heldEngine, madeCapture } from '../../../support/madeCapture.ts';

const SHA = 'a'.repeat(64);
const REQUEST = { windows: null, bank: null, thermal: [], troubleCodes: [] } as const;
const PAIR = {
  inletC: 143.33333333333334,
  outletC: 196.11111111111111,
  bank: null,
  brick: 1,
  rpm: null,
  emissivity: null,
};

const captures = {
  storing: heldEngine(() => 0.6),
  following: heldEngine((timeS) => 0.5 + 0.35 * Math.sin(2 * Math.PI * timeS - 0.5)),
  slow: heldEngine(() => 0.6, { rateHz: 1 }),
  short: heldEngine(() => 0.6, { durationS: 3 }),
  noSensors: madeCapture([{ role: 'rpm', value: () => 800 }]),
  oneSample: heldEngine(() => 0.6, { durationS: 0 }),
  nothing: madeCapture([]),
  allMissing: madeCapture([{ role: 'upstreamO2', bank: 1, value: () => Number.NaN }]),
} as const;

/** Scored once: a score takes its time, and it is the same each time. */
const scores = new Map(
  Object.entries(captures).map(([name, capture]) => [name, scoreCapture(capture, { ...REQUEST, thermal: [PAIR] })]),
);

function reportOf(name: keyof typeof captures) {
  return buildCommandReport({ capture: captures[name], sha256: SHA, input: 1 }, scoreOf(name));
}

function scoreOf(name: keyof typeof captures): CaptureScore {
  const score = scores.get(name);
  if (score === undefined) throw new Error(`no capture is called ${name}`);
  return score;
}

const names = ['storing', 'following', 'slow', 'short', 'noSensors', 'oneSample', 'nothing', 'allMissing'] as const;

describe('the JSON of the headless command', () => {
  test.each(names.map((name) => [name] as const))('%s: fits the contract, every number finite or null', (name) => {
    const report = reportOf(name);
    expect(commandReportSchema.safeParse(report).error).toBeUndefined();
    expect(JSON.parse(JSON.stringify(report))).toEqual(report);
  });

  test('has the keys that were promised', () => {
    const report = reportOf('following');
    expect(report).toMatchObject({
      contract: 1,
      tool: { name: 'tailtrace', version: CORE_VERSION },
      capture: { file: 'made.csv', sha256: SHA, durationS: 120, rows: 1201, warnings: [] },
    });
    expect(report.capture.channels[0]).toMatchObject({
      role: 'upstreamO2',
      bank: 1,
      name: 'front',
      unit: 'V',
      samples: 1201,
      medianRateHz: 10,
    });
    const window = report.windows.find(({ kind }) => kind === 'hold');
    for (const id of [
      'upstreamSwitchHz',
      'downstreamSwitchHz',
      'switchRatio',
      'amplitudeRatio',
      'pathRatio',
      'lagS',
      'upstreamMinV',
      'upstreamMaxV',
      'downstreamMeanV',
    ]) {
      expect(window?.measures, id).toHaveProperty(id);
    }
    expect(window?.uncertainty.switchRatio).toHaveLength(2);
    expect(report.thermal[0]).toMatchObject({ inletC: 143.333333333, outletC: 196.111111111, riseC: 52.7777777778 });
    expect(Object.keys(report.verdict)).toEqual(
      expect.arrayContaining(['finding', 'probabilityNotStoring', 'blockers', 'nextTest', 'reasons']),
    );
  });

  test('a measure is a number without a reason, or null with one', () => {
    for (const name of names) {
      const report = reportOf(name);
      for (const { measures, missing, uncertainty } of report.windows) {
        for (const [id, value] of Object.entries(measures)) {
          expect(value === null, id).toBe(Object.hasOwn(missing, id));
          const [low, high] = uncertainty[id] ?? [value, value];
          if (value !== null && low != null && high != null) {
            expect(low).toBeLessThanOrEqual(value + 1e-9);
            expect(high).toBeGreaterThanOrEqual(value - 1e-9);
          }
        }
      }
    }
  });

  test('--describe has the capture and no score', () => {
    const report = buildDescribeReport({ capture: captures.storing, sha256: SHA, input: 2 });
    expect(describeReportSchema.safeParse(report).error).toBeUndefined();
    expect(Object.keys(report)).toEqual(['contract', 'tool', 'capture']);
    expect(report.capture.input).toBe(2);
  });

  test('a number that is not finite is a broken promise of whoever made it', () => {
    const { storing: capture } = captures;
    const score = scoreOf('storing');
    const broken: CaptureScore = {
      ...score,
      verdict: { ...score.verdict, reasons: [{ id: 'x', for: 'weak', weight: Number.NaN, detail: '' }] },
    };
    expect(() => buildCommandReport({ capture, sha256: SHA, input: 1 }, broken)).toThrow(RangeError);
  });

  test('numbers lose the noise of binary arithmetic and nothing else', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }), (startS) => {
        const { storing: capture } = captures;
        const score = scoreOf('storing');
        const [window] = score.windows;
        if (window === undefined) return;
        const report = buildCommandReport(
          { capture, sha256: SHA, input: 1 },
          { ...score, windows: [{ ...window, startS }] },
        );
        expect(Math.abs((report.windows[0]?.startS ?? 0) - startS)).toBeLessThanOrEqual(1e-11 * Math.abs(startS));
      }),
    );
  });

  test('the core has the version of the program', () => {
    const text = readFileSync(join(import.meta.dirname, '../../../../package.json'), 'utf8');
    expect(JSON.parse(text).version).toBe(CORE_VERSION);
  });
});
