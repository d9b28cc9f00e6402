// What columns of one file say about each other. Files and values are invented; what they must be is written by hand.

import { describe, expect, it } from 'vitest';
import type { Capture } from '../../../../../core/capture/capture.ts';
import { readText } from '../../../../support/readText.ts';

const swing = (i: number, middle: number, height: number) => middle + height * Math.sin(i / 3);
const FRONT = (i: number) => swing(i, 0.45, 0.4).toFixed(3);
const REAR = (i: number) => swing(i, 0.65, 0.02).toFixed(3);

/** A file of these headings and values beside a time and an engine speed. */
async function fileOf(columns: Readonly<Record<string, (i: number) => string | number>>): Promise<Capture> {
  const heads = Object.keys(columns);
  const cells = (i: number) => heads.map((head) => columns[head]?.(i));
  const rows = Array.from({ length: 120 }, (_, i) => [i / 10, 2200 + (i % 40), ...cells(i)].join(','));
  return (await readText(`${['Time (s),RPM', ...heads].join(',')}\n${rows.join('\n')}\n`)).capture;
}

const find = ({ channels }: Capture, name: string) => channels.find((one) => one.name === name);
const place = (capture: Capture, name: string) => {
  const one = find(capture, name);
  return [one?.role, one?.bank, one?.sensor].filter((part) => part != null).join(' ');
};
const told = ({ warnings }: Capture, name: string) =>
  warnings.filter(({ id, detail }) => id !== 'channelNeverChanges' && detail.includes(`“${name}”`)).map(({ id }) => id);

describe('numbers of sensors', () => {
  it('beside a word for the place count banks where the file writes 1 behind the converter', async () => {
    const capture = await fileOf({
      'Lambdasonde 1 vor Kat [V]': FRONT,
      'Lambdasonde 2 vor Kat [V]': (i) => FRONT(i + 4),
      'Lambdasonde 1 nach Kat [V]': REAR,
      'Lambdasonde 2 nach Kat [V]': (i) => REAR(i + 4),
    });
    expect(place(capture, 'Lambdasonde 1 vor Kat [V]')).toBe('upstreamO2 1 1');
    expect(place(capture, 'Lambdasonde 2 vor Kat [V]')).toBe('upstreamO2 2 1');
    expect(place(capture, 'Lambdasonde 1 nach Kat [V]')).toBe('downstreamO2 1 2');
    expect(place(capture, 'Lambdasonde 2 nach Kat [V]')).toBe('downstreamO2 2 2');
    expect(told(capture, 'Lambdasonde 1 nach Kat [V]')).toEqual(['roleGuessed']);
  });

  it('count sensors where 1 stands before the converter and 2 behind it', async () => {
    const capture = await fileOf({ 'Lambdasonde 1 vor Kat [V]': FRONT, 'Lambdasonde 2 nach Kat [V]': REAR });
    expect(place(capture, 'Lambdasonde 2 nach Kat [V]')).toBe('downstreamO2 1 2');
    expect(told(capture, 'Lambdasonde 2 nach Kat [V]')).toEqual([]);
  });

  it('letters of banks are a guess, and the 2 of O2 before the word bank is none', async () => {
    const capture = await fileOf({ 'O2 bank A sensor 1': FRONT, 'O2 bank B sensor 1': (i) => FRONT(i + 4) });
    expect(place(capture, 'O2 bank A sensor 1')).toBe('upstreamO2 1 1');
    expect(place(capture, 'O2 bank B sensor 1')).toBe('upstreamO2 2 1');
    expect(told(capture, 'O2 bank A sensor 1')).toEqual(['roleGuessed']);
  });

  it('two columns of one name are asked about', async () => {
    const rows = Array.from({ length: 60 }, (_, i) => `${i / 10},${FRONT(i)},${FRONT(i + 4)},${REAR(i)}\n`).join('');
    const { capture, question } = await readText(`Time (s),O2S11 (V),O2S11 (V),O2S12 (V)\n${rows}`);
    expect(told(capture, 'O2S11 (V)')).toContain('roleGuessed');
    expect(question).not.toBeNull();
  });

  it('the lowest value of each stretch is not taken for the signal', async () => {
    const capture = await fileOf({ 'O2S11 min (V)': () => 0.1, 'O2S11 avg (V)': FRONT });
    expect(place(capture, 'O2S11 min (V)')).toBe('other');
    expect(place(capture, 'O2S11 avg (V)')).toBe('upstreamO2 1 1');
  });
});

describe('units that only one column gives away', () => {
  it('a rear sensor that rests at some millivolts is in millivolts as the front one is', async () => {
    const low = await fileOf({ 'O2 B1S1': (i) => Math.round(swing(i, 450, 400)), 'O2 B1S2': (i) => 40 + (i % 30) });
    expect(place(low, 'O2 B1S2')).toBe('downstreamO2 1 2');
    expect(find(low, 'O2 B1S2')?.facts).toMatchObject({ min: 0.04, max: 0.069 });
    const dead = await fileOf({ 'O2 B1S1': (i) => Math.round(swing(i, 450, 400)), 'O2 B1S2': (i) => i % 2 });
    expect(find(dead, 'O2 B1S2')?.facts).toMatchObject({ min: 0, max: 0.001 });
    expect(told(dead, 'O2 B1S2')).toContain('unitGuessed');
  });

  it('intake air is in °F where the coolant can only be in °F: 68 °F are 20 °C', async () => {
    const capture = await fileOf({ ect: (i) => 70 + i, iat: () => 68 });
    expect(find(capture, 'iat')?.facts).toMatchObject({ min: 20, max: 20 });
    expect(told(capture, 'iat')).toEqual(['unitGuessed']);
  });

  it('a pressure of the coolant says nothing about temperatures', async () => {
    const capture = await fileOf({ 'Coolant pressure': () => 180, iat: (i) => 20 + (i % 3) });
    expect(find(capture, 'iat')?.facts).toMatchObject({ min: 20, max: 22 });
  });

  it('trims about one are factors: 1.03 is 3 %, also for the long one that rests at 1.02', async () => {
    const capture = await fileOf({ 'STFT B1': (i) => swing(i, 1, 0.03).toFixed(3), 'LTFT B1': () => 1.02 });
    expect(find(capture, 'STFT B1')?.facts.max).toBeCloseTo(3, 5);
    expect(find(capture, 'STFT B1')?.facts.min).toBeCloseTo(-3, 5);
    expect(find(capture, 'LTFT B1')?.facts.max).toBeCloseTo(2, 5);
    expect(told(capture, 'LTFT B1')).toEqual(['unitGuessed']);
  });

  it('trims that never leave a third of a per cent are parts of one', async () => {
    const capture = await fileOf({ 'Short term fuel trim': (i) => swing(i, 0, 0.03).toFixed(4) });
    expect(find(capture, 'Short term fuel trim')?.facts.max).toBeCloseTo(3, 5);
    expect(told(capture, 'Short term fuel trim')).toEqual(['unitGuessed']);
  });

  it('trims in per cent stay as they are', async () => {
    const capture = await fileOf({ 'STFT B1': (i) => ((i % 5) - 2) * 0.8, 'LTFT B1': () => 0.8 });
    expect(find(capture, 'LTFT B1')?.facts.max).toBe(0.8);
    expect(told(capture, 'LTFT B1')).toEqual([]);
  });

  it('a unit that is named but not known is told', async () => {
    const rows = Array.from({ length: 60 }, (_, i) => `${i / 10};${30 + (i % 3)};${2200 + i}\n`).join('');
    const { capture } = await readText(`Time;Vehicle speed;RPM\ns;furlong/h;1/min\n${rows}`);
    expect(told(capture, 'Vehicle speed')).toContain('unitGuessed');
  });
});

describe('names that look like a sensor’s', () => {
  it('of another computer or cylinder are read without it', async () => {
    const capture = await fileOf({
      'ECM.O2_B1S1 (V)': FRONT,
      'AFR cyl 2': () => 14.9,
      'AFR bank 1': (i) => 14.7 + (i % 3) / 10,
    });
    expect(place(capture, 'ECM.O2_B1S1 (V)')).toBe('upstreamO2 1 1');
    expect(place(capture, 'AFR cyl 2')).toBe('other');
    expect(place(capture, 'AFR bank 1')).toBe('upstreamLambda 1 1');
  });

  it('of knock and camshaft sensors are not taken for oxygen sensors', async () => {
    const capture = await fileOf({ 'Knock B1S1 (V)': FRONT, 'Cam B1S2 (V)': REAR });
    expect(place(capture, 'Knock B1S1 (V)')).toBe('other');
    expect(place(capture, 'Cam B1S2 (V)')).toBe('other');
  });

  it('what was measured goes before what was calculated or holds at stoichiometry', async () => {
    const lambda = (i: number) => swing(i, 1, 0.03).toFixed(3);
    const capture = await fileOf({
      'Lambda (calculated)': lambda,
      'AFR stoich': () => 14.1,
      'Lambda (measured)': lambda,
    });
    expect(place(capture, 'Lambda (measured)')).toBe('upstreamLambda 1 1');
    expect(place(capture, 'AFR stoich')).toBe('other');
  });

  it('counts of one byte are not taken for millivolts without a word', async () => {
    const capture = await fileOf({ 'O2 B1S1': (i) => Math.round(swing(i, 90, 80)) });
    expect(told(capture, 'O2 B1S1')).toContain('roleGuessed');
  });

  it('the load of a road in newtons, of a processor, the speed of rollers are none of the engine', async () => {
    const fine = (i: number) => 30 + (i % 9);
    const capture = await fileOf({ 'Road load (N)': fine, 'CPU load (%)': fine, 'Dyno speed (rpm)': fine });
    expect(['Road load (N)', 'CPU load (%)', 'Dyno speed (rpm)'].map((name) => place(capture, name))).toEqual([
      'other',
      'other',
      'other',
    ]);
  });

  it('the air of one bank is asked about', async () => {
    expect(told(await fileOf({ 'MAF bank 1 (g/s)': (i) => 10 + (i % 3) }), 'MAF bank 1 (g/s)')).toEqual([
      'roleGuessed',
    ]);
  });
});

describe('air ratios that are none', () => {
  it('the fuel-air equivalence ratio is one over lambda: rich, 1.25, is 0.8', async () => {
    for (const name of ['phi B1S1', 'φ B1S1', 'Fuel-air equivalence ratio B1S1', 'richesse']) {
      const capture = await fileOf({ [name]: (i) => (i < 60 ? 1.25 : 1) });
      expect(place(capture, name)).toBe('upstreamLambda 1 1');
      expect(find(capture, name)?.facts).toMatchObject({ min: 0.8, max: 1 });
      expect(told(capture, name)).toEqual(['unitGuessed']);
    }
  });

  it('a deviation of lambda is no sensor', async () => {
    expect(place(await fileOf({ 'Lambda deviation': (i) => swing(i, 0, 0.03) }), 'Lambda deviation')).toBe('other');
  });

  it('thousandths of lambda are no millivolts, and are asked about', async () => {
    const capture = await fileOf({ 'Lambda B1S1': (i) => Math.round(swing(i, 1000, 30)) });
    expect(place(capture, 'Lambda B1S1')).toBe('other');
    expect(told(capture, 'Lambda B1S1')).toEqual(['roleQuestioned']);
  });

  it('O2 among CO and CO2 is a gas', async () => {
    const capture = await fileOf({ co: () => 0.1, co2: () => 14.5, o2: (i) => swing(i, 0.6, 0.2), 'O2S11 (V)': FRONT });
    expect(place(capture, 'o2')).toBe('other');
    expect(place(capture, 'O2S11 (V)')).toBe('upstreamO2 1 1');
  });
});

describe('the control loop', () => {
  it('as a switch is not read as codes, in which 1 is the open loop', async () => {
    for (const [name, value] of [
      ['Closed loop', (i: number) => (i > 20 ? 'TRUE' : 'FALSE')],
      ['Closed loop', () => 1],
      ['Open loop', (i: number) => (i > 20 ? 0 : 1)],
      ['Boucle fermée', () => 1],
      ['Lambdaregelung', (i: number) => (i > 20 ? 1 : 0)],
    ] as const) {
      const capture = await fileOf({ [name]: value });
      expect(place(capture, name), name).toBe('other');
      expect(told(capture, name), name).toEqual(['roleQuestioned']);
    }
  });

  it('in words and in codes is', async () => {
    const words = await fileOf({ loop: (i) => (i > 20 ? 'CL' : 'OL') });
    expect(place(words, 'loop')).toBe('fuelStatus 1');
    expect(find(words, 'loop')?.facts).toMatchObject({ min: 1, max: 2 });
    const codes = await fileOf({ 'Fuel system status': (i) => (i > 20 ? 2 : 1) });
    expect(place(codes, 'Fuel system status')).toBe('fuelStatus 1');
  });
});
