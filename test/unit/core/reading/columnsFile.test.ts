import { describe, expect, it } from 'vitest';
import {
  choiceFromFile,
  choiceOfTimes,
  columnsFileOf,
  columnsFileSchema,
} from '../../../../core/reading/columnsFile.ts';
import type { ColumnQuestion } from '../../../../core/reading/readCapture.ts';
import { columnChoiceSchema } from '../../../../core/record/schema.ts';
import { samplesOf } from '../../../support/readAsWritten.ts';
import { readText, rowsOf } from '../../../support/readText.ts';

const TEXT = `t,Front sensor [mV],Rear sensor [mV],n\n${rowsOf(60, (i, v) => `${i / 10},${(Number(v) * 1000).toFixed(0)},620,${2200 + i}`)}`;

async function question(): Promise<ColumnQuestion> {
  const asked = (await readText(TEXT, { alwaysAsk: true })).question;
  if (asked === null) throw new Error('No question.');
  return asked;
}

const byHand = columnsFileSchema.parse({
  columns: [
    { name: 'Front sensor [mV]', role: 'upstreamO2', bank: 1, unit: 'mV' },
    { name: 'rear SENSOR', role: 'downstreamO2', bank: 1, unit: 'mV' },
    { name: 't', role: 'time' },
    { name: 'n', role: 'rpm' },
  ],
});

const TWO_TIMES = [
  { name: 't', role: 'time' },
  { name: 'n', role: 'time' },
];

describe('a columns file', () => {
  it('written by hand with names is applied on reading', async () => {
    const fit = choiceFromFile(byHand, await question());
    if (!fit.ok) throw new Error(fit.misfit.kind);
    const { capture } = await readText(TEXT, { choice: fit.choice });
    expect(capture.channels.map(({ role, bank, sensor, unit }) => [role, bank, sensor, unit])).toEqual([
      ['upstreamO2', 1, 1, 'V'],
      ['downstreamO2', 1, 2, 'V'],
      ['rpm', null, null, '1/min'],
    ]);
    expect(capture.durationS).toBeCloseTo(5.9, 9);
  });

  it('makes a choice that the record can keep', async () => {
    const fit = choiceFromFile(byHand, await question());
    expect(fit.ok && columnChoiceSchema.safeParse(fit.choice).success).toBe(true);
  });

  it('that contradicts itself or the capture is refused in words', async () => {
    const asked = await question();
    const front = { name: 'Front sensor [mV]', role: 'upstreamO2', bank: 1 };
    for (const [columns, words] of [
      [[{ index: 3, name: 'Front sensor [mV]', role: 'upstreamO2', bank: 1 }], 'Column 3 is "n"'],
      [[front, { index: 1, role: 'downstreamO2', bank: 1 }], 'names the column "Front sensor [mV]" twice'],
      [[front, { name: 'Rear sensor', role: 'upstreamO2', bank: 1 }], 'are both to be upstream oxygen sensor'],
      [[{ ...front, unit: 'parsec' }], 'The unit "parsec"'],
      [[{ name: 'n', role: 'rpm', unit: 'V' }], 'The unit "V"'],
      [TWO_TIMES, '"t" and "n" are both to be the time'],
    ] as const) {
      const fit = choiceFromFile(columnsFileSchema.parse({ columns }), asked);
      expect(fit).toMatchObject({
        ok: false,
        misfit: { kind: 'contradiction', words: expect.stringContaining(words) },
      });
    }
  });

  it('that gives the time in two ways is refused where they differ', async () => {
    const asked = await question();
    const columns = [{ name: 't', role: 'time' }];
    expect(choiceFromFile(columnsFileSchema.parse({ timeColumn: 0, columns }), asked).ok).toBe(true);
    expect(choiceFromFile(columnsFileSchema.parse({ timeColumn: 3, columns }), asked)).toMatchObject({
      ok: false,
      misfit: { kind: 'contradiction', words: expect.stringContaining('"n" and "t" are both to be the time') },
    });
  });

  it('that counts columns the capture has not is refused', async () => {
    const asked = await question();
    for (const file of [{ columns: [{ index: 99, role: 'rpm' }] }, { timeColumn: 99 }]) {
      expect(choiceFromFile(columnsFileSchema.parse(file), asked)).toMatchObject({
        ok: false,
        misfit: { kind: 'noSuchColumn', name: '99' },
      });
    }
  });

  it('takes a role from the column that was guessed to have it, and tells of a unit that does not fit', async () => {
    const text = `Time (s),RPM,O2S11 (V),Spare (V)\n${rowsOf(60, (i, v) => `${i / 10},${2200 + i},0.1,${v}`)}`;
    const asked = (await readText(text, { alwaysAsk: true })).question;
    if (asked === null) throw new Error('No question.');
    const columns = [
      { name: 'Spare (V)', role: 'upstreamO2', bank: 1 },
      { name: 'O2S11 (V)', role: 'rpm' },
    ];
    const fit = choiceFromFile(columnsFileSchema.parse({ columns }), asked);
    if (!fit.ok) throw new Error(fit.misfit.kind);
    const { capture } = await readText(text, { choice: fit.choice });
    expect(capture.channels.map(({ role }) => role)).toEqual(['other', 'rpm', 'upstreamO2']);
    expect(capture.warnings.map(({ detail }) => detail)).toContain(
      '“O2S11 (V)” is in V, which is no unit of engine speed; its values stand as they are.',
    );
  });

  it('comes back the same when it is exported and read again', async () => {
    const asked = await question();
    const fit = choiceFromFile(byHand, asked);
    if (!fit.ok) throw new Error(fit.misfit.kind);
    const file = columnsFileSchema.parse(JSON.parse(JSON.stringify(columnsFileOf(fit.choice, asked.guesses))));
    expect(choiceFromFile(file, asked)).toEqual(fit);
    expect(file.columns[0]?.name).toBe('Front sensor [mV]');
  });

  it('carries the repairs that are undone there and back, and they hold on reading', async () => {
    const text = `t,Front sensor [mV],Rear sensor [mV],n\n${rowsOf(60, (i) => `${Math.floor(i / 4)},${100 + i},620,${2200 + i}`)}`;
    const asked = (await readText(text, { alwaysAsk: true })).question;
    if (asked === null) throw new Error('No question.');
    const fit = choiceFromFile({ ...byHand, asWritten: ['duplicateTimes', 'clockPastMidnight'] }, asked);
    if (!fit.ok) throw new Error(fit.misfit.kind);
    expect(fit.choice.asWritten).toEqual(['clockPastMidnight', 'duplicateTimes']);
    const file = columnsFileSchema.parse(JSON.parse(JSON.stringify(columnsFileOf(fit.choice, asked.guesses))));
    expect(choiceFromFile(file, asked)).toEqual(fit);
    const { capture } = await readText(text, { choice: fit.choice });
    expect(samplesOf(capture, 2).slice(0, 5)).toEqual([0, 0, 0, 0, 1].map((timeS, i) => [timeS, 2200 + i]));
  });

  it('for a capture whose columns need none holds repairs alone', () => {
    const times = columnsFileSchema.parse({ asWritten: ['outOfOrder'] });
    expect(choiceOfTimes(times, 'k')).toEqual({
      headerKey: 'k',
      timeColumn: null,
      rateHz: null,
      columns: [],
      asWritten: ['outOfOrder'],
    });
    expect(choiceOfTimes(columnsFileSchema.parse({}), 'k')).toBeNull();
    expect(choiceOfTimes({ ...byHand, asWritten: ['outOfOrder'] }, 'k')).toBeNull();
  });

  it('for another header, or with a name that is not there, does not fit', async () => {
    const asked = await question();
    expect(choiceFromFile({ ...byHand, headerKey: 'other' }, asked)).toMatchObject({
      ok: false,
      misfit: { kind: 'otherHeader' },
    });
    const wrong = columnsFileSchema.parse({ columns: [{ name: 'Lambda', role: 'rpm' }] });
    expect(choiceFromFile(wrong, asked)).toMatchObject({ ok: false, misfit: { kind: 'noSuchColumn', name: 'Lambda' } });
  });

  it.each([
    [{ columns: [{ role: 'rpm' }] }],
    [{ columns: [{ name: 'x', role: 'turbo' }] }],
    [{ columns: [{ name: 'x', role: 'rpm', bank: 3 }] }],
    [{ rateHz: 0 }],
    [{ rateHz: -5 }],
    [{ surprise: true }],
    [{ asWritten: ['gap'] }],
    [{ asWritten: 'outOfOrder' }],
  ])('%j is not one', (json) => {
    expect(columnsFileSchema.safeParse(json).success).toBe(false);
  });
});
