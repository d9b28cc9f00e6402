// Files whose writer was interrupted, and files that were cut off on the way: what is there is read, and what lacks is told.

import { describe, expect, it } from 'vitest';
import { readCapture } from '../../../../../core/reading/readCapture.ts';
import { bytesSource } from '../../../../support/bytesSource.ts';
import { type MdfGroup, writeMdf4 } from '../../../../support/writeMdf4.ts';

const ROWS = 50;
const ROW_BYTES = 10;
const GROUP: MdfGroup = {
  dataBytes: ROW_BYTES,
  cycles: ROWS,
  fields: [
    { name: 'time', unit: 's', dataType: 4, bitCount: 64, byteOffset: 0, type: 2 },
    { name: 'rpm', unit: '1/min', dataType: 0, bitCount: 16, byteOffset: 8 },
  ],
};

function file(): Uint8Array {
  const records = new Uint8Array(ROWS * ROW_BYTES);
  const view = new DataView(records.buffer);
  for (let i = 0; i < ROWS; i++) {
    view.setFloat64(i * ROW_BYTES, i / 10, true);
    view.setUint16(i * ROW_BYTES + 8, 2000 + i, true);
  }
  return writeMdf4({ groups: [GROUP], records, dataLast: true });
}

const read = async (bytes: Uint8Array) => {
  const outcome = await readCapture(bytesSource('drive.mf4', bytes), { choice: null });
  if (!outcome.ok) throw new Error(outcome.problem.what);
  const { channels, warnings } = outcome.value.capture;
  return { values: [...(channels[0]?.values ?? [])], warnings: warnings.map(({ id }) => id) };
};

/** As an instrument leaves it that loses its power: marked as unclosed, its data block still without a length. */
function interrupted(flags: number): Uint8Array {
  const bytes = file();
  bytes.set(new TextEncoder().encode('UnFinMF '));
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  view.setUint16(60, flags, true);
  const padding = (8 - ((ROWS * ROW_BYTES) % 8)) % 8;
  const dataAt = bytes.length - ROWS * ROW_BYTES - 24 - padding;
  expect(new TextDecoder().decode(bytes.subarray(dataAt, dataAt + 4))).toBe('##DT');
  view.setBigUint64(dataAt + 8, 24n, true);
  return bytes.subarray(0, bytes.length - padding);
}

describe('an unclosed measurement file', () => {
  it('is read to its end where its flags say that the length of its data is not written down', async () => {
    const { values, warnings } = await read(interrupted(4));
    expect(values).toEqual(Array.from({ length: ROWS }, (_, i) => 2000 + i));
    expect(warnings).toContain('unfinished');
    expect(warnings).not.toContain('truncated');
  });

  it('has no data where its flags do not say so', async () => {
    const outcome = await readCapture(bytesSource('drive.mf4', interrupted(0)), { choice: null });
    expect(outcome).toMatchObject({ ok: false });
  });
});

describe('a measurement file that was cut off on the way', () => {
  it.each([1, 9, 10, 155, 400])('by %i bytes is read as far as its records are whole, and says so', async (lost) => {
    const whole = file();
    const padding = (8 - ((ROWS * ROW_BYTES) % 8)) % 8;
    const { values, warnings } = await read(whole.subarray(0, whole.length - padding - lost));
    const rows = Math.floor((ROWS * ROW_BYTES - lost) / ROW_BYTES);
    expect(values).toEqual(Array.from({ length: rows }, (_, i) => 2000 + i));
    expect(warnings).toContain('truncated');
  });
});
