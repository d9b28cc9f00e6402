import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Capture } from '../../../../../core/capture/capture.ts';
import { timeAt } from '../../../../../core/capture/timeBase.ts';
import { readCapture } from '../../../../../core/reading/readCapture.ts';
import { bytesSource } from '../../../../support/bytesSource.ts';
import { type MdfGroup, writeMdf4 } from '../../../../support/writeMdf4.ts';

async function read(name: string, bytes: Uint8Array | string, chunkBytes = 4096): Promise<Capture> {
  const outcome = await readCapture(bytesSource(name, bytes, chunkBytes), { choice: null });
  if (!outcome.ok) throw new Error(outcome.problem.what);
  return outcome.value.capture;
}

const summary = (capture: Capture) =>
  capture.channels.map(({ role, bank, sensor, unit, values }) => [role, bank, sensor, unit, [...values]]);

const LOG = readFileSync(new URL('../../../../reference/values/socketcan.log', import.meta.url), 'utf8');

describe('a log of the diagnostic connector as a capture', () => {
  it('plays its roles by the standard, whatever the chunks', async () => {
    const whole = await read('drive.log', LOG);
    expect(summary(whole)).toEqual([
      ['upstreamO2', 1, 1, 'V', [0.72]],
      ['other', null, 1, '%', [3.90625]],
      ['downstreamO2', 1, 2, 'V', [0.65]],
      ['coolant', null, null, '°C', [83]],
    ]);
    expect(whole.startClock).toBe('2023-11-14T22:13:21.012Z');
    expect(whole.reported?.vehicleNumber).toBe('1'.repeat(17));
    expect(summary(await read('drive.log', LOG, 7))).toEqual(summary(whole));
  });

  it('names the lines that are no frames', async () => {
    const { warnings } = await read('drive.log', LOG.replace('(1700000001.200000)', 'torn line\n(1700000001.200000)'));
    expect(warnings.find(({ id }) => id === 'rowsSkipped')).toMatchObject({
      row: 12,
      count: 1,
      detail: '1 line is no frame and was skipped.',
    });
  });

  it('leaves the role to the engine unit where two units answer the same question', async () => {
    const { channels } = await read(
      'two.log',
      '(1.0) can0 7E9#03410C1AF8\n(1.0) can0 7E9#04410C1AF8\n(1.1) can0 7E8#04410C2710\n',
    );
    expect(channels.map(({ role, values }) => [role, values[0]])).toEqual([
      ['other', 1726],
      ['rpm', 2500],
    ]);
  });

  it('keeps apart what came over two interfaces, though the units have one number', async () => {
    const { channels } = await read(
      'two.log',
      `(1.0) can1 7E8#0341057B\n${Array.from({ length: 5 }, (_, i) => `(1.${i}) can0 7E8#03410500\n`).join('')}`,
    );
    expect(channels.map(({ name, role, values }) => [name, role, [...values]])).toEqual([
      ['Coolant temperature (unit 7E8 on can1)', 'other', [83]],
      ['Coolant temperature', 'coolant', [-40, -40, -40, -40, -40]],
    ]);
  });

  it('has no clock where its times count from its own start', async () => {
    expect((await read('drive.log', '(1.0) can0 7E8#0341057B\n(1.1) can0 7E8#0341057B\n')).startClock).toBeNull();
  });

  it('tells once what is true of all channels', async () => {
    const part = (from: number) =>
      Array.from(
        { length: 12 },
        (_, i) => `(${from}.${10 + i}) can0 7E8#0341057B\n(${from}.${10 + i}) can0 7E8#04410C1AF8\n`,
      ).join('');
    const { warnings } = await read('drive.log', part(5000) + part(1000));
    expect(warnings.filter(({ id }) => id === 'clockJumpedBack')).toHaveLength(1);
  });

  it('refuses a log without answers in three parts', async () => {
    const outcome = await readCapture(bytesSource('bus.log', '(1.0) can0 104#00\n(1.1) can0 105#01\n'), {
      choice: null,
    });
    expect(outcome).toMatchObject({ ok: false, problem: { id: 'noAnswers', where: 'bus.log' } });
  });
});

const GROUP: MdfGroup = {
  dataBytes: 10,
  cycles: 50,
  fields: [
    { name: 't', unit: 's', dataType: 4, bitCount: 64, byteOffset: 0, type: 2 },
    { name: 'O2S B1S1', unit: 'mV', dataType: 0, bitCount: 16, byteOffset: 8 },
  ],
};

function records(times: readonly number[]): Uint8Array {
  const bytes = new Uint8Array(times.length * 10);
  times.forEach((timeS, i) => {
    new DataView(bytes.buffer).setFloat64(i * 10, timeS, true);
    new DataView(bytes.buffer).setUint16(i * 10 + 8, 100 + i * 10, true);
  });
  return bytes;
}

describe('an MDF 4 file as a capture', () => {
  const steady = Array.from({ length: 50 }, (_, i) => 5 + i / 10);

  it('has its roles, units, times from zero and clock', async () => {
    const file = writeMdf4({ groups: [GROUP], records: records(steady), startNanoseconds: 1_700_000_000_000_000_000n });
    const capture = await read('bench.mf4', file, 100);
    expect(capture.channels[0]).toMatchObject({ role: 'upstreamO2', bank: 1, unit: 'V', fileUnit: 'mV' });
    expect(capture.channels[0]?.values[3]).toBeCloseTo(0.13, 6); // kept in 4 bytes: finer than the 16 bits it came from
    expect(capture.channels[0]?.time.kind).toBe('regular');
    expect(capture.durationS).toBeCloseTo(4.9, 9);
    expect(capture.startClock).toBe('2023-11-14T22:13:25Z');
  });

  it('puts times that run back in order and says so', async () => {
    const swapped = steady.map((timeS, i) => (i === 20 ? (steady[21] ?? 0) : i === 21 ? (steady[20] ?? 0) : timeS));
    const capture = await read('bench.mf4', writeMdf4({ groups: [GROUP], records: records(swapped) }));
    const base = capture.channels[0]?.time;
    if (!base) throw new Error('no channel');
    for (let i = 1; i < 50; i++) expect(timeAt(base, i)).toBeGreaterThan(timeAt(base, i - 1));
    expect([...(capture.channels[0]?.values ?? [])].slice(19, 23).map((v) => Math.round(v * 1000))).toEqual([
      290, 310, 300, 320,
    ]);
    expect(capture.warnings.some(({ repaired }) => repaired)).toBe(true);
  });

  it('refuses a damaged file with the byte', async () => {
    const file = writeMdf4({ groups: [GROUP], records: records(steady) });
    file[64] = 0;
    const outcome = await readCapture(bytesSource('bench.mf4', file), { choice: null });
    expect(outcome).toMatchObject({ ok: false, problem: { id: 'unreadable', where: 'bench.mf4, byte 64' } });
  });
});

describe('memory', () => {
  const refusal = async (name: string, bytes: Uint8Array | string, memoryBytes: number) => {
    const outcome = await readCapture(bytesSource(name, bytes, 4096), { choice: null, memoryBytes });
    return outcome.ok ? null : outcome.problem;
  };

  it('a long log of the connector is refused once its values need more than there is', async () => {
    const long = LOG.repeat(200);
    expect(await refusal('long.log', long, 10_000)).toMatchObject({ id: 'tooLarge', where: 'long.log' });
    expect(await refusal('long.log', long, 10_000_000)).toBeNull();
  });

  it('a measurement file is refused where it, its times and its values do not fit', async () => {
    const group: MdfGroup = {
      dataBytes: 9,
      cycles: 2000,
      fields: [
        { name: 't', unit: 's', dataType: 4, bitCount: 64, byteOffset: 0, type: 2 },
        { name: 'n', unit: '1/min', dataType: 0, bitCount: 8, byteOffset: 8 },
      ],
    };
    const records = new Uint8Array(9 * 2000);
    const view = new DataView(records.buffer);
    for (let i = 0; i < 2000; i++) view.setFloat64(9 * i, i / 10, true);
    const file = writeMdf4({ groups: [group], records });
    const needs = file.length + 8 * 2000 + 4 * 2000;
    expect(await refusal('drive.mf4', file, needs - 1)).toMatchObject({ id: 'tooLarge', where: 'drive.mf4' });
    expect(await refusal('drive.mf4', file, needs)).toBeNull();
  });
});
