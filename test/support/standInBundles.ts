// The bundles of the stand-in shell: packed and opened by the real core, in the page's own memory.

import type { ReceivedBundle, ShellBridge } from '../../core/bridge/shellMessages.ts';
import { readBundle } from '../../core/evidence/bundle/readBundle.ts';
import { writeBundle } from '../../core/evidence/bundle/writeBundle.ts';
import { continuingOpinions } from '../../core/opinions/continuing.ts';
import { startBlindReading } from '../../core/record/blindReading.ts';
import { receiveRecord } from '../../core/record/receiveRecord.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import { writersOf } from '../../core/record/writersOf.ts';
import { CORE_VERSION } from '../../core/version.ts';

type BundleRequests = Pick<ShellBridge, 'weighBundle' | 'exportBundle' | 'checkBundle' | 'takeBundle' | 'cancelBundle'>;

/** What the bundles need of the rest of the stand-in. */
export interface BundleGround {
  /** A file behind a token, or null. */
  file(token: string): Promise<{ readonly name: string; readonly bytes: Uint8Array } | null>;
  /** Bytes of a capture of this hash, or null where it is not found. */
  capture(sha256: string): Promise<Uint8Array | null>;
  known(vehicleId: string): VehicleRecord | null;
  keep(record: VehicleRecord): void;
  keepCapture(name: string, sha256: string, bytes: Uint8Array): void;
  written(kind: string, name: string, content: Uint8Array): void;
}

const MADE_AT = '2026-11-24T15:30:00+01:00';

export async function sha256Of(bytes: Uint8Array): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new Uint8Array(bytes));
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

const sha256OfText = (text: string): Promise<string> => sha256Of(new TextEncoder().encode(text));

export function standInBundles(ground: BundleGround): BundleRequests {
  const open = async (token: string) => {
    const file = await ground.file(token);
    if (file === null) return { ok: false as const, problem: notThere };
    const opened = await readBundle(file.bytes, file.name, { sha256: sha256Of, coreVersion: CORE_VERSION });
    return opened.ok ? { ok: true as const, file, value: opened.value } : opened;
  };
  return {
    weighBundle: async ({ captures }) => ({
      ok: true,
      captures: await Promise.all(
        captures.map(async ({ captureId, sha256 }) => {
          const state = (await ground.capture(sha256)) === null ? ('notFound' as const) : ('ready' as const);
          return { captureId, state, vehicleNumbers: 0 };
        }),
      ),
    }),
    exportBundle: async ({ suggestedName, record, sheet, captureIds }) => {
      const captures: { captureId: string; name: string; bytes: Uint8Array }[] = [];
      for (const { id, name, sha256 } of Object.values(record.captures)) {
        const bytes = captureIds.includes(id) ? await ground.capture(sha256) : null;
        if (bytes !== null) captures.push({ captureId: id, name, bytes });
      }
      const contents = { record, sheet, captures, madeAt: MADE_AT, coreVersion: CORE_VERSION };
      const { bytes, manifestSha256 } = await writeBundle(contents, sha256Of);
      ground.written('tailtrace-bundle', suggestedName, bytes);
      return { name: suggestedName, manifestSha256, problem: null };
    },
    checkBundle: async ({ token }) => {
      const opened = await open(token);
      if (!opened.ok) return opened;
      const { record, manifest, manifestSha256, otherCore } = opened.value;
      const known = ground.known(record.id);
      const bundle: ReceivedBundle = {
        token,
        name: opened.file.name,
        sha256: await sha256Of(opened.file.bytes),
        manifestSha256,
        madeAt: manifest.madeAt,
        coreVersion: manifest.coreVersion,
        otherCore: otherCore !== null,
        vehicle: record.identity.name,
        here: known === null ? 'nothing' : 'other',
        captures: Object.values(record.captures).map(({ id, name, bytes }) => ({
          id,
          name,
          bytes,
          enclosed: manifest.captures.some(({ captureId }) => captureId === id),
        })),
        windows: Object.keys(record.windows).length,
        notes: Object.keys(record.notes).length,
        readings: Object.keys(record.readings).length,
        opinions: Object.keys(record.opinions).length,
        writers: writersOf(record),
        vehicleId: record.id,
        newOpinions: known === null ? [] : await continuingOpinions(record, known, sha256OfText),
      };
      return { ok: true, bundle };
    },
    takeBundle: async ({ token, blind }) => {
      const opened = await open(token);
      if (!opened.ok) return opened;
      const { record, captures } = opened.value;
      const known = ground.known(record.id);
      const kept = receiveRecord({ received: record, known, newId: `${record.id}-beside`, instant: MADE_AT });
      for (const { name, bytes } of captures) ground.keepCapture(name, await sha256Of(bytes), bytes);
      ground.keep(blind ? startBlindReading(kept, MADE_AT) : kept);
      return { ok: true, vehicleId: kept.id };
    },
    cancelBundle: async () => null,
  };
}

const notThere = {
  id: 'noFile',
  what: 'This file is not there.',
  where: 'The stand-in',
  doNext: 'Pick another one.',
};
