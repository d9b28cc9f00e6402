// What a long measurement file must not do: hold up others, go on after it was cancelled, or take more memory than it may.

import { describe, expect, it } from 'vitest';
import { type ReadOptions, readCapture } from '../../../../../core/reading/readCapture.ts';
import { bytesSource } from '../../../../support/bytesSource.ts';
import { type MdfGroup, writeMdf4 } from '../../../../support/writeMdf4.ts';

const ROWS = 600_000;
const linear = (factor: number) => ({ type: 1 as const, values: [0, factor] });
const GROUP: MdfGroup = {
  dataBytes: 4,
  cycles: ROWS,
  fields: [
    { name: 'time', unit: 's', dataType: 0, bitCount: 0, byteOffset: 0, type: 3, conversion: linear(0.001) },
    { name: 'O2 B1S1', unit: 'V', dataType: 0, bitCount: 16, byteOffset: 0, conversion: linear(0.005) },
    { name: 'O2 B1S2', unit: 'V', dataType: 0, bitCount: 16, byteOffset: 2, conversion: linear(0.005) },
  ],
};

function file(): Uint8Array {
  const records = new Uint8Array(ROWS * 4);
  const view = new DataView(records.buffer);
  for (let i = 0; i < ROWS; i++) {
    view.setUint16(4 * i, 20 + (i % 160), true);
    view.setUint16(4 * i + 2, 120, true);
  }
  return writeMdf4({ groups: [GROUP], records, dataLast: true });
}

const BYTES = file();
const read = (options: Partial<ReadOptions> = {}) =>
  readCapture(bytesSource('long.mf4', BYTES, 1 << 20), { choice: null, ...options });

describe('a long measurement file', () => {
  it('is read with counted times, in 4 bytes a value, as fine as its 16 bits', async () => {
    const outcome = await read();
    if (!outcome.ok) throw new Error(outcome.problem.what);
    const [front, rear] = outcome.value.capture.channels;
    expect(front?.time).toEqual({ kind: 'regular', startS: 0, stepS: 0.001, length: ROWS });
    expect(front?.values).toBeInstanceOf(Float32Array);
    expect(front?.values[159]).toBeCloseTo(0.895, 6);
    expect([front?.facts.min, front?.facts.max, rear?.facts.finite]).toEqual([0.1, 0.895, ROWS]);
  });

  it('gives way many times after its bytes have come', async () => {
    let pauses = 0;
    await read({
      pause: async () => {
        pauses++;
      },
    });
    expect(pauses).toBeGreaterThanOrEqual(6);
  });

  it('stops at the next of these when it is cancelled', async () => {
    let pauses = 0;
    const outcome = await read({
      pause: async () => {
        pauses++;
      },
      isCancelled: () => pauses >= 2,
    });
    expect(outcome).toMatchObject({ ok: false, problem: { id: 'cancelled', where: 'long.mf4' } });
    expect(pauses).toBe(2);
  });

  it.each([
    ['the file alone', BYTES.length - 1],
    ['its values beside it', BYTES.length + 6 * ROWS],
  ])('is refused before it hurts where %s would take more memory than there is', async (_words, memoryBytes) => {
    const outcome = await read({ memoryBytes });
    expect(outcome).toMatchObject({ ok: false, problem: { id: 'tooLarge', where: 'long.mf4' } });
  });

  it('is read where file and values just fit', async () => {
    expect(await read({ memoryBytes: BYTES.length + 8 * ROWS })).toMatchObject({ ok: true });
  });

  it('shows its first rows by its first bytes', async () => {
    const outcome = await read({ mostBytes: 200_000 });
    if (!outcome.ok) throw new Error(outcome.problem.what);
    const { channels } = outcome.value.capture;
    const { length } = channels[0]?.values ?? [];
    expect(length).toBeGreaterThan(45_000);
    expect(length).toBeLessThan(50_000);
    expect(channels[1]?.values[length - 1]).toBeCloseTo(0.6, 6);
  });
});
