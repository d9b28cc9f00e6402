import { describe, expect, it } from 'vitest';
import { BlockFault } from '../../../../../core/reading/mdf4/blocks.ts';
import { readMdf4 } from '../../../../../core/reading/mdf4/readMdf4.ts';
import { RoomFault } from '../../../../../core/reading/mdf4/recordFields.ts';
import { undoTranspose } from '../../../../../core/reading/mdf4/transpose.ts';
import { type DataForm, type MdfGroup, writeMdf4 } from '../../../../support/writeMdf4.ts';

const limits = {
  roomBytes: 1e6,
  decodeUtf8: (bytes: Uint8Array) => new TextDecoder().decode(bytes),
  breathe: async () => undefined,
};

/** Time (64-bit real), volts (u16 * 0.005), a signed 12-bit field at bit 4, an i16 high byte first; one wrong bit. */
const GROUP: MdfGroup = {
  dataBytes: 14,
  invalidationBytes: 1,
  cycles: 20,
  fields: [
    { name: 'time', unit: 's', dataType: 4, bitCount: 64, byteOffset: 0, type: 2 },
    {
      name: 'O2S B1S1',
      unit: 'V',
      dataType: 0,
      bitCount: 16,
      byteOffset: 8,
      conversion: { type: 1, values: [0, 0.005] },
      wrongBit: 0,
    },
    { name: 'narrow', dataType: 2, bitCount: 12, bitOffset: 4, byteOffset: 10 },
    { name: 'swapped', dataType: 3, bitCount: 16, byteOffset: 12 },
  ],
};

function records(count: number, idBytes = 0, id = 0): Uint8Array {
  const stride = idBytes + 15;
  const bytes = new Uint8Array(count * stride);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < count; i++) {
    const at = i * stride;
    if (idBytes === 1) view.setUint8(at, id);
    const from = at + idBytes;
    view.setFloat64(from, i * 0.1, true);
    view.setUint16(from + 8, 100 + i, true);
    view.setUint16(from + 10, ((i - 10) & 0xfff) << 4, true);
    view.setInt16(from + 12, -1000 * i, false);
    view.setUint8(from + 14, i === 3 ? 1 : 0);
  }
  return bytes;
}

async function valuesOf(file: Uint8Array, name: string): Promise<number[]> {
  const { channels } = await readMdf4(file, limits);
  return [...(channels.find((channel) => channel.name === name)?.values ?? [])];
}

describe('readMdf4 (ASAM MDF 4 block layout)', () => {
  const forms: DataForm[] = ['DT', 'DL', 'HL', 'DZ', 'DZT'];

  it.each(forms)('reads the same numbers from data laid out as %s', async (form) => {
    const file = writeMdf4({ groups: [GROUP], records: records(20), form });
    const volts = await valuesOf(file, 'O2S B1S1');
    expect(volts).toHaveLength(20);
    expect(volts[3]).toBeNaN();
    expect(volts[19]).toBeCloseTo(0.595, 6); // kept in 4 bytes: finer than the 16 bits it came from
    expect(await valuesOf(file, 'narrow')).toEqual(Array.from({ length: 20 }, (_, i) => i - 10));
    expect(await valuesOf(file, 'swapped')).toEqual(Array.from({ length: 20 }, (_, i) => (i === 0 ? 0 : -1000 * i)));
    const [first] = (await readMdf4(file, limits)).channels;
    expect(first?.times.kind === 'listed' && first.times.timesS[10]).toBeCloseTo(1, 12);
    expect(first?.unit).toBe('V');
  });

  it('works the published example of a linear conversion: raw 144 at 0.005 is 0.72 V (check 7.25)', async () => {
    const volts = await valuesOf(writeMdf4({ groups: [GROUP], records: records(45) }), 'O2S B1S1');
    expect(volts[44]).toBeCloseTo(0.72, 6);
  });

  it('sorts records of two groups that are mixed in one block', async () => {
    const other: MdfGroup = { ...GROUP, recordId: 2, fields: GROUP.fields.map((f) => ({ ...f, name: `${f.name}*` })) };
    const a = records(6, 1, 1);
    const b = records(6, 1, 2);
    const mixed = new Uint8Array(a.length + b.length);
    for (let i = 0; i < 6; i++) {
      mixed.set(a.subarray(i * 16, i * 16 + 16), i * 32);
      mixed.set(b.subarray(i * 16, i * 16 + 16), i * 32 + 16);
    }
    const file = writeMdf4({ groups: [{ ...GROUP, recordId: 1 }, other], records: mixed, idBytes: 1 });
    expect(await valuesOf(file, 'narrow')).toEqual([-10, -9, -8, -7, -6, -5]);
    expect(await valuesOf(file, 'narrow*')).toEqual([-10, -9, -8, -7, -6, -5]);
  });

  it.each([
    ['table with lines between', 4, [0, 0, 10, 100], [5, 10, 30], [50, 100, 100]],
    ['table with the nearer row', 5, [0, 0, 10, 100], [4, 6, 30], [0, 100, 100]],
    ['table of ranges with a default', 6, [0, 4, 1, 5, 9, 2, -1], [3, 5, 20], [1, 2, -1]],
    ['rational', 2, [0, 2, 1, 0, 0, 2], [3, 5, 7], [3.5, 5.5, 7.5]],
  ] as const)('converts by a %s', async (_words, type, values, raw, expected) => {
    const group: MdfGroup = {
      dataBytes: 9,
      cycles: 3,
      fields: [
        { name: 'time', dataType: 4, bitCount: 64, byteOffset: 0, type: 2 },
        { name: 'x', dataType: 0, bitCount: 8, byteOffset: 8, conversion: { type, values: [...values] } },
      ],
    };
    const bytes = new Uint8Array(27);
    raw.forEach((number, i) => {
      new DataView(bytes.buffer).setFloat64(i * 9, i, true);
      bytes[i * 9 + 8] = number;
    });
    expect(await valuesOf(writeMdf4({ groups: [group], records: bytes }), 'x')).toEqual([...expected]);
  });

  it('keeps what is whole of a data block that is cut short, and says what was lost', async () => {
    const contents = await readMdf4(writeMdf4({ groups: [GROUP], records: records(20).subarray(0, 157) }), limits);
    expect(contents.records).toBe(10);
    expect(contents.remarks.join(' ')).toContain('7 bytes');
  });

  it('leaves out a group that has no time and says so', async () => {
    const group: MdfGroup = { ...GROUP, fields: GROUP.fields.slice(1) };
    const contents = await readMdf4(writeMdf4({ groups: [group], records: records(3) }), limits);
    expect(contents.channels).toEqual([]);
    expect(contents.remarks.join(' ')).toContain('no time');
  });

  it('refuses version 3 by name', async () => {
    const old = writeMdf4({ groups: [GROUP], records: records(1), version: 330 });
    await expect(readMdf4(old, limits)).rejects.toThrow(/version 3.30/);
  });

  it('refuses compressed data that would outgrow the memory set aside (check 7.27)', async () => {
    const file = writeMdf4({ groups: [GROUP], records: records(20), form: 'DZ' });
    await expect(readMdf4(file, { ...limits, roomBytes: 299 })).rejects.toThrow(BlockFault);
  });

  it('refuses a list that names a block of data twice, so that a small file cannot grow without end', async () => {
    const file = writeMdf4({ groups: [GROUP], records: records(20), form: 'DL' });
    const view = new DataView(file.buffer, file.byteOffset);
    const isList = (at: number) => new TextDecoder().decode(file.subarray(at, at + 4)) === '##DL';
    const lists = Array.from({ length: file.length / 8 }, (_, i) => 8 * i).filter(isList);
    const twoPieces = lists.find((at) => view.getBigUint64(at + 16, true) === 3n) ?? Number.NaN;
    view.setBigUint64(twoPieces + 40, view.getBigUint64(twoPieces + 32, true), true);
    await expect(readMdf4(file, limits)).rejects.toThrow('names the same block twice');
  });

  it('counts the times of a virtual master that are no even count against the memory set aside', async () => {
    const group: MdfGroup = {
      dataBytes: 1,
      cycles: 20,
      fields: [
        {
          name: 'time',
          dataType: 0,
          bitCount: 0,
          byteOffset: 0,
          type: 3,
          conversion: { type: 4, values: [0, 0, 64, 32] },
        },
        { name: 'x', dataType: 0, bitCount: 8, byteOffset: 0 },
      ],
    };
    const file = writeMdf4({ groups: [group], records: new Uint8Array(20) });
    const [channel] = (await readMdf4(file, limits)).channels;
    expect(channel?.times).toEqual({ kind: 'listed', timesS: Float64Array.from({ length: 20 }, (_, i) => i / 2) });
    await expect(readMdf4(file, { ...limits, roomBytes: 20 * 4 + 20 * 8 - 1 })).rejects.toThrow(RoomFault);
    await expect(readMdf4(file, { ...limits, roomBytes: 20 * 4 + 20 * 8 })).resolves.toMatchObject({ records: 20 });
  });

  it('ends with a message at every cut and every flipped byte, never with anything else', async () => {
    const file = writeMdf4({ groups: [GROUP], records: records(8), form: 'HL' });
    const attempt = async (bytes: Uint8Array) => {
      try {
        await readMdf4(bytes, limits);
        return true;
      } catch (cause) {
        if (!(cause instanceof BlockFault)) throw cause;
        return true;
      }
    };
    for (let length = 0; length < file.length; length += 3) expect(await attempt(file.slice(0, length))).toBe(true);
    for (let at = 0; at < file.length; at++) {
      const changed = file.slice();
      changed[at] = (changed[at] ?? 0) ^ 0xff;
      expect(await attempt(changed)).toBe(true);
    }
  });
});

describe('undoTranspose', () => {
  it('restores the published example (check 7.28)', () => {
    const stored = Uint8Array.from([1, 4, 7, 2, 5, 8, 3, 6, 9, 10]);
    expect([...undoTranspose(stored, 3)]).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  });
});
