import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newVehicle } from '../../../../core/record/newVehicle.ts';
import { receiveRecord } from '../../../../core/record/receiveRecord.ts';
import { type VehicleRecord, vehicleRecordSchema } from '../../../../core/record/schema.ts';

const vehicle = (name: string, id = 'one'): VehicleRecord =>
  newVehicle({ id, name, createdAt: '2026-11-01T08:00:00+01:00' });
const arrival = { newId: 'two', instant: '2026-11-28T09:30:00+01:00' };

describe('a record that came in a bundle', () => {
  it('is taken in as it stands where its vehicle is not known', () => {
    const received = vehicle('Van 14');
    expect(receiveRecord({ received, known: null, ...arrival })).toEqual(received);
  });

  it('becomes a vehicle of its own, with a marked name, where its vehicle is known', () => {
    const received = { ...vehicle('Van 14'), archived: true };
    const known = vehicle('Van 14, ours');
    expect(receiveRecord({ received, known, ...arrival })).toEqual({
      ...received,
      id: 'two',
      identity: { ...received.identity, name: 'Van 14 (received 2026-11-28)' },
    });
  });

  it('brings nothing new where it says what the known one says', () => {
    const known = vehicle('Van 14');
    expect(receiveRecord({ received: structuredClone(known), known, ...arrival })).toBe(known);
  });

  it('leaves both records alone and gives one that can be kept, whatever they are called', () => {
    const name = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 500 }).filter((text) => text.length <= 500);
    fc.assert(
      fc.property(name, name, (one, other) => {
        fc.pre(one.trim() !== '' && other.trim() !== '');
        const [received, known] = [vehicle(one), vehicle(other)];
        const before = structuredClone([received, known]);
        const kept = receiveRecord({ received, known, ...arrival });
        expect([received, known]).toEqual(before);
        expect(vehicleRecordSchema.safeParse(kept).success).toBe(true);
        expect(kept.id).toBe(one === other ? 'one' : 'two');
      }),
    );
  });

  it('cuts no character in half', () => {
    const received = vehicle(`${'x'.repeat(449)}😀`);
    const { identity } = receiveRecord({ received, known: vehicle('Van 14'), ...arrival });
    expect(identity.name).toBe(`${'x'.repeat(449)} (received 2026-11-28)`);
  });
});
