// A made-up vehicle with one of everything that a sheet can carry, judged by hand: what is tested is how it is told.

import { NOTHING_PRIVATE, type SheetInput } from '../../core/evidence/sheetInput.ts';
import type { Verdict, WindowScore } from '../../core/findings/finding.ts';
import { keptRecord } from './keptRecord.ts';

const verdict: Verdict = {
  finding: 'notStoring',
  probabilityNotStoring: 0.973,
  blockers: [],
  reasons: [
    {
      id: 'switchRatio',
      for: 'notStoring',
      weight: 3.162,
      detail: 'The rear sensor switches 0.82 times as often as the front one.',
    },
    {
      id: 'thermal',
      for: 'storing',
      weight: -0.2,
      detail: 'The outlet is cooler than the inlet, which weighs little.',
    },
  ],
  nextTests: [
    {
      id: 'leak',
      words: 'Check for a leak with smoke.',
      why: 'It is the last imitator that was not ruled out.',
      minutes: 15,
    },
  ],
  sentence: 'Converter of bank 1: does not store oxygen (97 %).',
};

const windowScore: WindowScore = {
  startS: 61.2,
  endS: 121.2,
  bank: 1,
  kind: 'hold',
  origin: 'accepted',
  conditions: [
    { id: 'engineWarm', met: true, detail: 'Coolant 88 to 91 °C.' },
    { id: 'speedSteady', met: false, detail: 'Speed 1900 to 2600 1/min.' },
    { id: 'readinessKnown', met: null, detail: 'Readiness was not recorded.' },
  ],
  measures: [
    { id: 'switchRatio', value: 0.8234567, interval: [0.61, 1.02], missing: null },
    { id: 'downstreamMeanV', value: 0.4512, interval: null, missing: null },
    { id: 'lagS', value: null, interval: null, missing: 'The rate of 3 Hz is too low to time an edge.' },
  ],
  finding: 'notStoring',
  probabilityNotStoring: 0.95,
  reasons: verdict.reasons,
  blockers: [
    { id: 'speedUnsteady', words: 'Engine speed was not steady: 1900 to 2600 1/min.', removedBy: 'holdAgain' },
  ],
  nextTests: verdict.nextTests,
};

/** Fresh each time; tests may change it. */
export function sheetInput(): SheetInput {
  return {
    record: keptRecord(),
    score: {
      windows: [{ windowId: 'w1', captureId: 'c1', kind: 'before', score: windowScore }],
      thermal: [
        {
          readingId: 'r1',
          reading: {
            inletC: 260,
            outletC: 195.5555,
            bank: 1,
            brick: 1,
            rpm: 2300,
            emissivity: 0.95,
            riseC: -64.4444,
            riseInterval: [-90, -40],
            reading: 'The outlet is 64 K cooler than the inlet.',
            weight: 0.4,
          },
        },
      ],
      before: { verdict, banks: [{ ...verdict, bank: 1 }] },
      after: null,
      sentence: 'Converter of bank 1: does not store oxygen (97 %). One window, one thermal pair; no rule-out open.',
    },
    captures: {
      c1: {
        startClock: '2026-11-24T08:06:00',
        layout: { id: 'text', words: 'Text, commas, header in row 1, seconds', headerKey: 'h-1' },
        warnings: [{ id: 'gap', detail: 'No rows for 2.1 s after row 900.', row: 900, count: 1, repaired: false }],
        channels: [
          {
            role: 'upstreamO2',
            bank: 1,
            name: 'O2 B1S1 (V)',
            unit: 'V',
            samples: 4128,
            facts: {
              finite: 4128,
              min: 0.05,
              max: 0.9,
              medianRateHz: 10,
              jitterS: 0,
              renewalRateHz: 10,
              resolution: 0.005,
            },
          },
        ],
      },
    },
    // As checkOpinions gives them: test/unit/core/opinions checks that.
    opinions: Object.values(keptRecord().opinions).map((entry) => ({
      entry,
      state: 'whole',
      sha256: 'cd'.repeat(32),
      sameRecord: entry.id === 'o3',
    })),
    pictures: [
      {
        captureId: 'c1',
        caption: 'Traces of van-before.csv',
        alternative: 'The rear sensor follows the front sensor between 0.1 and 0.9 V.',
        svg: '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10"><text x="1" y="5">x</text></svg>',
      },
    ],
    comparisons: [
      {
        first: 'Hold at 2300 of van-before.csv',
        second: 'Hold 1 of van-after.csv',
        comparison: {
          first: { startS: 61.2, endS: 121.2, bank: 1, kind: 'hold', origin: 'accepted' },
          second: { startS: 50, endS: 110, bank: 1, kind: 'hold', origin: 'suggested' },
          sentence: 'Not alike: speed.',
          unlike: [{ id: 'speed', words: 'Speed: 2310 against 1480 1/min' }],
          pairs: [
            {
              id: 'switchRatio',
              words: 'Switching, rear over front',
              unit: '1',
              digits: 2,
              first: 0.82,
              second: 0.03,
              difference: -0.79,
              interval: [-0.85, -0.71],
            },
            {
              id: 'lagS',
              words: 'Delay',
              unit: 's',
              digits: 2,
              first: null,
              second: 1.2,
              difference: null,
              interval: null,
            },
          ],
        },
      },
    ],
    hash: {
      of: 'the record in canonical form',
      sha256: 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    },
    settings: {
      temperatureUnit: 'C',
      decimalSign: '.',
      paper: 'A4',
      include: NOTHING_PRIVATE,
      madeAt: '2026-11-24T15:30:00+01:00',
      reader: 'First reader',
      coreVersion: '0.1.0',
    },
  };
}
