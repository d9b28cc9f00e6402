// ISO 15765-2 and 15765-4 (checks 1.35, 1.40 to 1.42), SAE J2012 codes (1.50, 1.51), 49 CFR 565.15 (1.36), and
// service 06 unit-and-scaling ids (1.33).

import { readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { diagnosticAddress } from '../../core/diagnostics/canAddress.ts';
import { MessageAssembler } from '../../core/diagnostics/isoTp.ts';
import { converterBank, testResultsIn } from '../../core/diagnostics/testResults.ts';
import { troubleCode } from '../../core/diagnostics/troubleCode.ts';
import { scaled, unitScaling } from '../../core/diagnostics/unitScaling.ts';
import { vehicleNumberCheckDigit, vehicleNumberIn } from '../../core/diagnostics/vehicleNumber.ts';

function bytes(hex: string): Uint8Array {
  return Uint8Array.from(hex.replace(/ /g, '').match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
}

function rowsOf<Row>(file: string): Row[] {
  const text = readFileSync(new URL(`./values/${file}`, import.meta.url), 'utf8');
  return Papa.parse<Row>(text, { header: true, skipEmptyLines: true }).data;
}

describe('messages longer than a frame (ISO 15765-2)', () => {
  it('joins the vehicle number of seventeen ones from three frames (check 1.41)', () => {
    const assembler = new MessageAssembler();
    expect(assembler.take('7E8', bytes('10 14 49 02 01 31 31 31'))).toEqual({ kind: 'part' });
    expect(assembler.take('7E0', bytes('30 00 00 00'))).toEqual({ kind: 'flowControl' });
    expect(assembler.take('7E8', bytes('21 31 31 31 31 31 31 31'))).toEqual({ kind: 'part' });
    const last = assembler.take('7E8', bytes('22 31 31 31 31 31 31 31'));
    expect(last.kind).toBe('message');
    if (last.kind === 'message') expect(vehicleNumberIn(last.payload)).toBe('1'.repeat(17));
  });

  it('drops a message that lost a part instead of joining it', () => {
    const assembler = new MessageAssembler();
    assembler.take('7E8', bytes('10 14 49 02 01 31 31 31'));
    expect(assembler.take('7E8', bytes('22 31 31 31 31 31 31 31'))).toEqual({ kind: 'dropped', why: 'sequence' });
    expect(assembler.take('7E8', bytes('23 31 31 31 31 31 31 31'))).toEqual({ kind: 'dropped', why: 'noFirstFrame' });
  });

  it('takes no padding for data', () => {
    const result = new MessageAssembler().take('7E8', bytes('04 41 14 90 85 AA AA AA'));
    expect(result).toEqual({ kind: 'message', payload: bytes('41 14 90 85') });
  });

  it('keeps two senders apart', () => {
    const assembler = new MessageAssembler();
    assembler.take('7E8', bytes('10 09 41 00 01 02 03 04'));
    assembler.take('7E9', bytes('10 09 41 0A 0B 0C 0D 0E'));
    const first = assembler.take('7E8', bytes('21 05 06 07'));
    const second = assembler.take('7E9', bytes('21 0F 10 11'));
    expect(first).toEqual({ kind: 'message', payload: bytes('41 00 01 02 03 04 05 06 07') });
    expect(second).toEqual({ kind: 'message', payload: bytes('41 0A 0B 0C 0D 0E 0F 10 11') });
  });

  it.each(['', '00', '08 41', '10', '50 00', '1F FF 01'])('drops the malformed frame "%s"', (hex) => {
    expect(new MessageAssembler().take('7E8', bytes(hex)).kind).toBe('dropped');
  });
});

describe('addresses (ISO 15765-4, check 1.40)', () => {
  it.each([
    [0x7df, false, { kind: 'request', unit: null }],
    [0x7e0, false, { kind: 'request', unit: 0 }],
    [0x7e8, false, { kind: 'answer', unit: 0 }],
    [0x7ef, false, { kind: 'answer', unit: 7 }],
    [0x18db33f1, true, { kind: 'request', unit: null }],
    [0x18da10f1, true, { kind: 'request', unit: 0x10 }],
    [0x18daf110, true, { kind: 'answer', unit: 0x10 }],
    [0x104, false, null],
    [0x7e8, true, null],
  ] as const)('%i, 29 bits %s', (identifier, extended, expected) => {
    expect(diagnosticAddress(identifier, extended)).toEqual(expected);
  });
});

describe('trouble codes (SAE J2012, check 1.50)', () => {
  it.each(rowsOf<{ bytes_hex: string; code: string }>('dtc-decode.csv'))('$bytes_hex is $code', (row) => {
    const [high = 0, low = 0] = bytes(row.bytes_hex);
    expect(troubleCode(high, low)).toBe(row.code);
  });
});

describe('vehicle number (49 CFR 565.15, check 1.36)', () => {
  it('has check digit 1 for seventeen ones', () => expect(vehicleNumberCheckDigit('1'.repeat(17))).toBe('1'));
  it('writes ten as X', () => expect(vehicleNumberCheckDigit('AAAAAAAA0A0000000')).toBe('X'));
  it('knows no I, O or Q', () => expect(vehicleNumberCheckDigit('1111111I111111111')).toBeNull());
});

describe('on-board tests (SAE J1979 service 06)', () => {
  it.each(rowsOf<{ uas_id_hex: string; per_bit: string; offset: string }>('mode06-scaling.csv'))(
    'scaling id $uas_id_hex has $per_bit a bit and offset $offset',
    (row) => {
      const scaling = unitScaling(Number.parseInt(row.uas_id_hex, 16));
      expect(scaling).not.toBeNull();
      if (!scaling) return;
      expect(scaled(scaling, 1) - scaled(scaling, 0)).toBeCloseTo(Number(row.per_bit), 12);
      expect(scaled(scaling, 0)).toBe(Number(row.offset));
    },
  );

  it('passes a value on its limit and fails one beyond it', () => {
    const on = testResultsIn(bytes('46 21 81 01 01 00 00 32 01 00'))[0];
    const beyond = testResultsIn(bytes('46 21 81 01 01 01 00 32 01 00'))[0];
    expect([on?.passed, beyond?.passed]).toEqual([true, false]);
  });

  it('tells a converter (21) from a heater (41), which lists often swap (check 1.31)', () => {
    expect([converterBank(0x21), converterBank(0x22), converterBank(0x41)]).toEqual([1, 2, null]);
  });
});
