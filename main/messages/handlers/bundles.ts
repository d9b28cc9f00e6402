import { randomUUID } from 'node:crypto';
import type { ReceivedBundle } from '../../../core/bridge/shellMessages.ts';
import { continuingOpinions } from '../../../core/opinions/continuing.ts';
import type { Problem } from '../../../core/reading/problem.ts';
import { startBlindReading } from '../../../core/record/blindReading.ts';
import { receiveRecord, saysTheSame } from '../../../core/record/receiveRecord.ts';
import type { VehicleRecord } from '../../../core/record/schema.ts';
import { writersOf } from '../../../core/record/writersOf.ts';
import type { ToldBundle } from '../../bundles/bundleWorker.ts';
import type { PlacedCapture } from '../../bundles/weighCaptures.ts';
import { localInstant } from '../../command/localInstant.ts';
import type { KnownRecord } from '../../store/knownRecord.ts';
import { sha256Of } from '../../store/sealedRecord.ts';
import type { Handlers } from '../receive.ts';
import type { ShellTools } from './tools.ts';

type Names = 'weighBundle' | 'checkBundle' | 'takeBundle' | 'cancelBundle';

/** Bundles for a second reader: what goes into one, and what comes out of one. Writing it is an export. */
export function bundleHandlers({
  library,
  store,
  bundles,
}: Pick<ShellTools, 'library' | 'store' | 'bundles'>): Pick<Handlers, Names> {
  /** What was checked, by token: only what the person has seen is taken in. */
  const checked = new Map<string, ToldBundle>();

  return {
    async weighBundle({ captures }) {
      const placed: PlacedCapture[] = [];
      for (const one of captures) placed.push({ ...one, path: await library.whereIs(one.sha256, one.name) });
      const weighed = await bundles.weigh(placed);
      return weighed.ok ? { ok: true, captures: weighed.value } : weighed;
    },
    async checkBundle({ token }) {
      const file = library.tokens.find(token);
      if (file === null) return { ok: false, problem: notPicked() };
      const opened = await bundles.open(file.path, file.name);
      if (!opened.ok) return opened;
      checked.set(token, opened.value);
      const known = await store.known(opened.value.record.id);
      return { ok: true, bundle: await received(token, file.name, opened.value, known) };
    },
    async takeBundle({ token, manifestSha256, blind }) {
      const file = library.tokens.find(token);
      const told = checked.get(token);
      if (file === null || told?.manifestSha256 !== manifestSha256) return { ok: false, problem: notPicked() };
      const known = await store.known(told.record.id);
      if (known === 'unreadable') return { ok: false, problem: unreadableHere(told.record) };
      const instant = localInstant(new Date());
      const here = known === 'none' ? null : known;
      const record = receiveRecord({ received: told.record, known: here, newId: randomUUID(), instant });
      if (record === known) return { ok: true, vehicleId: record.id };
      const { path, name } = file;
      const kept = await bundles.keep({ path, name, manifestSha256, folder: store.capturesFolder(record.id) });
      if (!kept.ok) return kept;
      const saved = await store.save(blind ? startBlindReading(record, instant) : record);
      return saved.saved ? { ok: true, vehicleId: record.id } : { ok: false, problem: saved.problem };
    },
    cancelBundle() {
      bundles.cancel();
      return null;
    },
  };
}

async function received(
  token: string,
  name: string,
  { record, manifest, manifestSha256, fileSha256, otherCore }: ToldBundle,
  known: KnownRecord,
): Promise<ReceivedBundle> {
  const enclosed = new Set(manifest.captures.map(({ captureId }) => captureId));
  const count = (entries: Readonly<Record<string, unknown>>): number => Object.keys(entries).length;
  return {
    token,
    name,
    sha256: fileSha256,
    manifestSha256,
    madeAt: manifest.madeAt,
    coreVersion: manifest.coreVersion,
    otherCore: otherCore !== null,
    vehicle: record.identity.name,
    here: hereOf(record, known),
    captures: Object.values(record.captures).map((capture) => ({
      id: capture.id,
      name: capture.name,
      bytes: capture.bytes,
      enclosed: enclosed.has(capture.id),
    })),
    windows: count(record.windows),
    notes: count(record.notes),
    readings: count(record.readings),
    opinions: count(record.opinions),
    writers: writersOf(record),
    vehicleId: record.id,
    newOpinions:
      typeof known === 'string' ? [] : await continuingOpinions(record, known, async (text) => sha256Of(text)),
  };
}

function hereOf(record: VehicleRecord, known: KnownRecord): ReceivedBundle['here'] {
  if (known === 'none') return 'nothing';
  if (known === 'unreadable') return 'unreadable';
  if (known === 'lost') return 'other';
  return saysTheSame(record, known) ? 'same' : 'other';
}

const notPicked = (): Problem => ({
  id: 'bundle.notPicked',
  what: 'This bundle has not been checked in this run of the program.',
  where: 'the bundle',
  doNext: 'Open it again.',
});

const unreadableHere = ({ identity }: VehicleRecord): Problem => ({
  id: 'bundle.unreadableHere',
  what: 'This vehicle is kept here, and its newest save is damaged, so that the two cannot be told apart.',
  where: identity.name,
  doNext: 'Open the vehicle from the list and choose an earlier save; then open the bundle again.',
});
