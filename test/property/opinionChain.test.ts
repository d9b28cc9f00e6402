// T-EV-5: whatever is changed in an older opinion, every later one says that it is broken.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkOpinions } from '../../core/opinions/chain.ts';
import { canonicalJson } from '../../core/record/canonical.ts';
import type { Signed } from '../../core/record/opinionSchema.ts';
import { vehicleRecordSchema } from '../../core/record/schema.ts';
import { anOpinion, nodeSha256, withSigned } from '../support/signedChain.ts';
import { signedEntry, startRecord } from './recordArbitraries.ts';

const chain = fc.array(signedEntry, { minLength: 2, maxLength: 6 }).map((made) => made.map((make, i) => make(`o${i}`)));

/** Any other value of the kind that a field holds. */
function other(value: unknown, salt: number): unknown {
  if (typeof value === 'string') return `${[...value].slice(0, -1).join('')}${value.endsWith('0') ? '1' : '0'}`;
  if (typeof value === 'number') return value === salt ? salt + 1 : salt;
  if (typeof value === 'boolean') return !value;
  if (value === null) return 'something';
  return null;
}

/** Every place in a value where something stands that is no map or list, and empty maps and lists. */
function placesIn(value: unknown, path: readonly string[] = []): (readonly string[])[] {
  if (typeof value !== 'object' || value === null || Object.keys(value).length === 0) return [path];
  return Object.entries(value).flatMap(([key, part]) => placesIn(part, [...path, key]));
}

function putAt(value: unknown, path: readonly string[], change: (old: unknown) => unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return change(value);
  const copy: unknown = Array.isArray(value) ? [...value] : { ...Object(value) };
  Reflect.set(Object(copy), key, putAt(Reflect.get(Object(value), key), rest, change));
  return copy;
}

describe('T-EV-5', () => {
  test('what was signed passes the record’s schema, and its chain is whole', async () => {
    await fc.assert(
      fc.asyncProperty(chain, async (entries) => {
        const record = await withSigned(startRecord, entries);
        expect(vehicleRecordSchema.safeParse(record).error).toBeUndefined();
        const links = await checkOpinions(record, nodeSha256);
        expect(links.map(({ entry, state }) => [entry.id, state])).toEqual(entries.map(({ id }) => [id, 'whole']));
      }),
    );
  });

  test('any change to any part of an older entry breaks all later ones, and it is not called whole itself', async () => {
    await fc.assert(
      fc.asyncProperty(chain, fc.nat(), fc.nat(), fc.nat(), async (entries, which, place, salt) => {
        const record = await withSigned(startRecord, entries);
        const older = which % (entries.length - 1);
        const before = record.opinions[`o${older}`];
        const places = placesIn(before);
        const path = places[place % places.length] ?? [];
        const after: Signed = JSON.parse(JSON.stringify(putAt(before, path, (value) => other(value, salt))));
        fc.pre(canonicalJson(before) !== canonicalJson(after));
        const opinions = Object.fromEntries(
          Object.entries(record.opinions).map(([id, entry]): [string, Signed] => [
            id,
            id === `o${older}` ? after : entry,
          ]),
        );
        const changed = { ...record, opinions };
        const links = await checkOpinions(changed, nodeSha256);
        expect(links).toHaveLength(entries.length);
        for (const { entry, state } of links) {
          const at = Object.entries(opinions).find(([, one]) => one === entry)?.[0] ?? '';
          const number = Number(at.slice(1));
          if (number > older) expect(state).toBe('broken');
          if (number === older) expect(state).not.toBe('whole');
          if (number < older - 1) expect(state).toBe('whole');
        }
      }),
      { numRuns: Math.max(1000, fc.readConfigureGlobal().numRuns ?? 0) },
    );
  });

  test('so does taking an older one away, or putting one in', async () => {
    await fc.assert(
      fc.asyncProperty(chain, fc.nat(), fc.boolean(), async (entries, which, put) => {
        const record = await withSigned(startRecord, entries);
        const older = which % (entries.length - 1);
        const { [`o${older}`]: gone, ...rest } = record.opinions;
        const stranger = await withSigned(
          { ...record, opinions: Object.fromEntries(Object.entries(record.opinions).slice(0, older + 1)) },
          [anOpinion('stranger')],
        );
        const opinions = put ? { ...stranger.opinions, ...record.opinions } : rest;
        expect(gone).toBeDefined();
        const links = await checkOpinions({ ...record, opinions }, nodeSha256);
        for (const { entry, state } of links) {
          if (Number(entry.id.slice(1)) > older || entry.id === 'stranger') expect(state).toBe('broken');
        }
      }),
    );
  });
});
