import { describe, expect, it } from 'vitest';
import { newVehicle } from '../../../../core/record/newVehicle.ts';
import type { CaptureRef, RecordWindow, VehicleRecord } from '../../../../core/record/schema.ts';
import { likelyPair } from '../../../../renderer/compare/likelyPair.ts';

/** One window in each capture, called like the capture's kind and number: "before1". */
function record(...kinds: readonly CaptureRef['kind'][]): VehicleRecord {
  const vehicle = newVehicle({ id: 'v', name: 'Van', createdAt: '2026-01-01T00:00:00Z' });
  kinds.forEach((kind, index) => {
    const id = `${kind}${index}`;
    vehicle.captures[id] = capture(id, kind, index);
    vehicle.windows[id] = window(id);
  });
  return vehicle;
}

function capture(id: string, kind: CaptureRef['kind'], index: number): CaptureRef {
  const facts = { bytes: 1, sha256: 'a'.repeat(64), durationS: 100, rows: 1000, columnChoice: null, sample: false };
  return { id, kind, name: `${id}.csv`, addedAt: `2026-01-0${index + 1}T00:00:00Z`, ...facts };
}

function window(id: string): RecordWindow {
  return { id, captureId: id, name: id, startS: 10, endS: 20, bank: 1, kind: 'hold', origin: 'byHand' };
}

describe('the pair one most likely wants to see', () => {
  it.each([
    [['before', 'after'], 'before0', 'before0', 'after1'],
    [['before', 'after'], 'after1', 'before0', 'after1'],
    [['after', 'before'], 'after0', 'before1', 'after0'],
    [['before', 'before', 'knownGood'], 'before0', 'before0', 'knownGood2'],
    [['knownGood', 'before'], 'knownGood0', 'before1', 'knownGood0'],
    [['other', 'other'], null, 'other0', 'other1'],
  ] as const)('of %j with %s chosen is %s and %s', (kinds, chosen, firstId, secondId) => {
    expect(likelyPair(record(...kinds), chosen)).toEqual({ firstId, secondId });
  });

  it('takes the same kind of window before another', () => {
    const vehicle = record('before', 'after', 'after');
    vehicle.windows.after1 = { ...window('after1'), kind: 'idle' };
    expect(likelyPair(vehicle, 'before0')).toEqual({ firstId: 'before0', secondId: 'after2' });
  });

  it('is none where there is one window or none', () => {
    expect(likelyPair(record(), null)).toBeNull();
    expect(likelyPair(record('before'), 'before0')).toBeNull();
  });
});
