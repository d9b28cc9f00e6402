import { expect, test } from 'vitest';
import { thermalReason } from '../../../../core/findings/thermalReason.ts';
import { readThermal } from '../../../../core/thermal/readThermal.ts';

const pair = (inletC: number, outletC: number, rpm: number) =>
  readThermal({ inletC, outletC, bank: 1, brick: null, rpm, emissivity: null });
const held = pair(500, 384, 2300);
const atIdle = pair(300, 310, 750);

test('a pair taken at idle takes nothing from one that was taken at a raised speed', () => {
  expect(thermalReason([held, atIdle], 1)).toEqual(thermalReason([held], 1));
});

test('two that say the same are not twice the proof', () => {
  expect(thermalReason([held, held], 1)[0]?.weight).toBe(thermalReason([held], 1)[0]?.weight);
});

test('pairs that tell nothing give no reason, so that a pair is still asked for', () => {
  expect(thermalReason([atIdle], 1)).toEqual([]);
  expect(thermalReason([], 1)).toEqual([]);
});
