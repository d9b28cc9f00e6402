// What a log of the diagnostic connector says of codes and readiness reaches the finding.

import { describe, expect, test } from 'vitest';
import type { Capture } from '../../../../core/capture/capture.ts';
import type { MonitorName, Reported } from '../../../../core/capture/reported.ts';
import { knownCodes } from '../../../../core/findings/knownCodes.ts';
import { scoreCapture } from '../../../../core/scoreCapture.ts';
import { sampleCapture } from '../../../support/sampleCapture.ts';

const VAN = await sampleCapture('van-before.csv');

function reporting(codes: readonly string[], incomplete: readonly MonitorName[] | null): Capture {
  const reported: Reported = {
    codes: codes.map((code) => ({ code, status: 'confirmed' })),
    vehicleNumber: null,
    monitors: incomplete && {
      lampOn: codes.length > 0,
      codes: codes.length,
      ignition: 'spark',
      supported: ['misfire', 'fuelSystem', 'catalyst', 'evap', 'o2Sensor'],
      incomplete,
    },
    tests: [],
  };
  return { ...VAN, reported };
}

const verdictOn = (capture: Capture) =>
  scoreCapture(capture, { windows: null, bank: null, thermal: [], troubleCodes: [] }).verdict;
const blockersOf = (capture: Capture) => verdictOn(capture).blockers.map(({ id }) => id);

describe('codes that a capture reports', () => {
  test('join those a person recorded, each once', () => {
    expect(knownCodes([reporting(['P0420', 'P0301'], null)], ['P0420'])).toEqual(['P0420', 'P0301']);
    expect(knownCodes([VAN], ['P0171'])).toEqual(['P0171']);
  });

  test('a misfire in the log blocks as one on paper does', () => {
    expect(verdictOn(VAN).finding).toBe('notStoring');
    expect(blockersOf(reporting(['P0301'], null))).toEqual(['misfire']);
    expect(verdictOn(reporting(['P0301'], null)).finding).toBe('cannotTell');
  });
});

describe('readiness that a capture reports', () => {
  test('a monitor that would have found a misleading fault and has not finished keeps the finding back', () => {
    const { finding, blockers, nextTests } = verdictOn(reporting([], ['misfire', 'evap']));
    expect(finding).toBe('cannotTell');
    expect(blockers.map(({ words }) => words)).toEqual([expect.stringContaining('misfire')]);
    expect(nextTests[0]?.id).toBe('monitorsRun');
  });

  test('an unfinished converter monitor is what people come with, and blocks nothing', () => {
    expect(blockersOf(reporting([], ['catalyst', 'evap']))).toEqual([]);
    expect(blockersOf(reporting([], []))).toEqual([]);
  });
});
