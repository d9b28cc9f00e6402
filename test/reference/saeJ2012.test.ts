// SAE J2012 / ISO 15031-6: meanings of trouble codes, check 1.52 (table dtc-meaning.csv, read from the source tree of an
// open engine controller, 115 codes in our words); which codes the standard defines is from memory of J2012.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { codeGroup } from '../../core/conditions/codeGroups.ts';
import { definedBy, knownTroubleCodes, troubleCodeMeaning } from '../../core/evidence/troubleCodeMeanings.ts';
import { parseTroubleCodes } from '../../core/record/parseTroubleCodes.ts';

const text = readFileSync(join(import.meta.dirname, 'values', 'dtc-meaning.csv'), 'utf8');
const rows = Papa.parse<{ code: string; meaning: string }>(text, { header: true, skipEmptyLines: true }).data;

describe('SAE J2012: what trouble codes mean', () => {
  test.each(rows.map(({ code, meaning }) => [code, meaning] as const))('%s: %s', (code, meaning) => {
    expect(troubleCodeMeaning(code)).toBe(meaning);
  });

  test('the table holds all 115 and nothing else', () => {
    expect(rows).toHaveLength(115);
    expect(knownTroubleCodes()).toEqual(rows.map(({ code }) => code).sort());
  });

  test('P0420 names the system, P0421 the warm-up brick, P0422 the main brick, P0431 the warm-up brick of bank 2', () => {
    expect(troubleCodeMeaning('P0420')).toMatch(/system.*bank 1/);
    expect(troubleCodeMeaning('P0421')).toMatch(/warm-up.*bank 1/);
    expect(troubleCodeMeaning('P0422')).toMatch(/main.*bank 1/);
    expect(troubleCodeMeaning('P0431')).toMatch(/warm-up.*bank 2/);
  });

  test('misfire numbers are decimal: P0310 is cylinder 10, and P030A is no name of it', () => {
    expect(troubleCodeMeaning('P0310')).toBe('misfire, cylinder 10');
    expect(troubleCodeMeaning('P030A')).toBeNull();
  });

  // Check 1.52 again: what the table says of a sensor decides which sensor a code speaks of.
  test.each(
    rows
      .filter(({ meaning }) => /^(heater|oxygen sensor).*sensor [12]$/.test(meaning))
      .map((row) => [row.code, row.meaning] as const),
  )('%s speaks of one sensor: %s', (code, meaning) => {
    expect(codeGroup(code)).toBe(meaning.endsWith('sensor 1') ? 'frontSensor' : 'rearSensor');
  });

  test.each(['P0033', 'P0034', 'P0035', 'P0039'])(
    '%s, a boost bypass (from memory of J2012), speaks of no sensor',
    (code) => {
      expect(codeGroup(code)).toBeNull();
    },
  );

  test.each([
    ['P2177', 'mixture', 'lean off idle'],
    ['P2180', 'mixture', 'rich off idle, bank 2'],
    ['P2187', 'mixture', 'lean at idle'],
    ['P2190', 'mixture', 'rich at idle, bank 2'],
    ['P2194', 'mixture', 'rich at higher load, bank 2'],
    ['P2231', 'frontSensor', 'sensor 1 shorted to its heater'],
    ['P2235', 'rearSensor', 'sensor 2 of bank 2 shorted to its heater'],
    ['P2237', 'frontSensor', 'pump current, sensor 1'],
    ['P2256', 'frontSensor', 'return, sensor 1 of bank 2'],
  ])('%s belongs to %s: %s (from memory of J2012)', (code, group) => {
    expect(codeGroup(code)).toBe(group);
  });

  // Their neighbours: throttle, cooling, barometer, a third sensor, secondary air (from memory).
  test.each(['P2176', 'P2181', 'P2186', 'P2230', 'P2233', 'P2236', 'P2257'])('%s stands before no finding', (code) => {
    expect(codeGroup(code)).toBeNull();
  });

  test.each([
    ['P0420', 'standard'],
    ['P2A01', 'standard'],
    ['P1420', 'maker'],
    ['P3000', 'maker'],
    ['P3400', 'standard'],
    ['U0100', 'standard'],
    ['U1000', 'maker'],
    ['C2100', 'maker'],
    ['B0001', 'standard'],
  ])('%s is defined by the %s', (code, by) => {
    expect(definedBy(code)).toBe(by);
  });

  test('codes are read as people type them', () => {
    expect(parseTroubleCodes('p0420, P0171;u0100 P0420\tp2a01')).toEqual({
      codes: ['P0420', 'P0171', 'U0100', 'P2A01'],
      refused: [],
    });
    expect(parseTroubleCodes('P0420,P04Z0,420,P4000')).toEqual({
      codes: ['P0420'],
      refused: ['P04Z0', '420', 'P4000'],
    });
    expect(parseTroubleCodes(' ')).toEqual({ codes: [], refused: [] });
  });
});
