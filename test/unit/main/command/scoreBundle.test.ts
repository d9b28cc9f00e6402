// A bundle in the headless command: checked, and judged with what its record says (T-EV-2, T-EV-3).

import { createHash } from 'node:crypto';
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzipSync, zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeBundle } from '../../../../core/evidence/bundle/writeBundle.ts';
import { madeFindings } from '../../../../core/evidence/madeFindings.ts';
import { judgeVehicle } from '../../../../core/findings/judgeVehicle.ts';
import { choiceFromFile, columnsFileSchema } from '../../../../core/reading/columnsFile.ts';
import { readCapture } from '../../../../core/reading/readCapture.ts';
import { evidenceOf } from '../../../../core/record/evidenceOf.ts';
import { newVehicle } from '../../../../core/record/newVehicle.ts';
import type { CaptureRef, ColumnChoice, KeptFinding, VehicleRecord } from '../../../../core/record/schema.ts';
import { CORE_VERSION } from '../../../../core/version.ts';
import { bytesSource } from '../../../support/bytesSource.ts';
import { commandIn, reportsOf } from '../../../support/scoreCommand.ts';

const folder = mkdtempSync(join(tmpdir(), 'tailtrace-score-bundle-'));
const DRIVE = 'assets/drives/van-before.csv';
const drive = readFileSync(DRIVE);
const sha256 = (bytes: Uint8Array | string) => createHash('sha256').update(bytes).digest('hex');
const NOW = '2026-11-24T15:30:00+01:00';
const SHEET = '<p>the first reader’s sheet</p>';
const run = commandIn(folder);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const ref = (columnChoice: ColumnChoice | null): CaptureRef => ({
  id: 'c1',
  kind: 'before',
  name: 'van-before.csv',
  bytes: drive.length,
  sha256: sha256(drive),
  addedAt: NOW,
  durationS: 452,
  rows: 4524,
  columnChoice,
  sample: true,
});

/** A vehicle with one window, one reading, one code. */
function vehicle(columnChoice: ColumnChoice | null = null): VehicleRecord {
  const reading = { bank: null, brick: 1, rpm: null, emissivity: null, takenAt: NOW, captureId: null };
  const pair = { inlet: { value: 500, unit: 'F' as const }, outlet: { value: 384, unit: 'F' as const } };
  return {
    ...newVehicle({ id: 'van', name: 'Van 14', createdAt: NOW }),
    captures: { c1: ref(columnChoice) },
    windows: {
      w1: {
        id: 'w1',
        captureId: 'c1',
        name: 'Hold',
        startS: 240,
        endS: 300,
        bank: null,
        kind: 'hold',
        origin: 'byHand',
      },
    },
    readings: { r1: { id: 'r1', ...reading, ...pair } },
    troubleCodes: { t1: { id: 't1', code: 'P0420', status: 'confirmed' } },
  };
}

const FLAGS = ['--window', '240..300', '--inlet', '500F', '--outlet', '384F', '--trouble-codes', 'P0420'];

async function bundleOf(record: VehicleRecord, name = 'van.tailtrace-bundle', enclosed = true): Promise<Buffer> {
  const captures = enclosed ? [{ captureId: 'c1', name: 'van-before.csv', bytes: new Uint8Array(drive) }] : [];
  const { bytes } = await writeBundle(
    { record, sheet: SHEET, captures, madeAt: NOW, coreVersion: CORE_VERSION },
    sha256,
  );
  writeFileSync(join(folder, name), bytes);
  return Buffer.from(bytes);
}

/** The record with the findings that the window would keep. */
async function judged(record: VehicleRecord): Promise<VehicleRecord> {
  const read = await readCapture(bytesSource('van-before.csv', drive), { choice: null });
  if (!read.ok) throw new Error(read.problem.what);
  const { capture } = read.value;
  const made = madeFindings(judgeVehicle(evidenceOf(record, () => ({ capture }))));
  const kept = made.map((one): KeptFinding => ({ ...one, coreVersion: CORE_VERSION, madeAt: NOW }));
  return { ...record, findings: Object.fromEntries(kept.map((one) => [one.id, one])) };
}

beforeAll(async () => {
  copyFileSync(DRIVE, join(folder, 'van-before.csv'));
  await bundleOf(await judged(vehicle()));
});

describe('T-EV-3: recomputing', () => {
  test('a bundle gives the same numbers as the capture with the same windows, codes and temperatures', async () => {
    const original = await run(['van-before.csv', '--json', ...FLAGS]);
    const bundled = await run(['van.tailtrace-bundle', '--json']);
    expect(bundled).toMatchObject({ status: 0, err: '' });
    const [report] = reportsOf(bundled);
    const { bundle, ...rest } = report ?? {};
    expect(`${JSON.stringify(rest)}\n`).toBe(original.out);
    expect(bundle).toMatchObject({ file: 'van.tailtrace-bundle', coreVersion: CORE_VERSION, madeAt: NOW });
  });

  test('the findings that came with it stand beside those worked out here, and agree to the last bit', async () => {
    const [report] = reportsOf(await run(['van.tailtrace-bundle', '--json']));
    const [window] = report?.bundle?.windows ?? [];
    expect(window).toMatchObject({ id: 'w1', name: 'Hold', agree: true, kept: { coreVersion: CORE_VERSION } });
    expect(window?.recomputed?.finding).toBe(report?.windows[0]?.finding);
    expect(window?.recomputed?.probabilityNotStoring).toBe(report?.windows[0]?.probabilityNotStoring);
    expect(report?.bundle?.vehicle).toMatchObject({ name: 'Van 14', agree: true });
  });

  test('a finding that differs in its last bit, or was never kept, is told', async () => {
    const record = await judged(vehicle());
    const kept = record.findings['window-w1'];
    if (kept === undefined) throw new Error('no finding of the window');
    const probabilityNotStoring = (kept.probabilityNotStoring ?? 0) - 2 ** -53;
    const other = { ...kept, probabilityNotStoring, coreVersion: '0.0.9' };
    await bundleOf({ ...record, findings: { [kept.id]: other } }, 'other.tailtrace-bundle');
    const [report] = reportsOf(await run(['other.tailtrace-bundle', '--json']));
    expect(report?.bundle?.windows).toMatchObject([
      { agree: false, kept: { coreVersion: '0.0.9', probabilityNotStoring } },
    ]);
    expect(report?.bundle?.vehicle).toMatchObject({ kept: null, agree: null });
    const { out } = await run(['other.tailtrace-bundle']);
    expect(out).toMatch(
      /Hold: does not store oxygen \(99\s% sure\); HERE ANOTHER, in digits that are not shown: does not store oxygen/,
    );
  });

  test('columns are read as the record says, and a flag wins', async () => {
    const columns = { columns: [{ name: 'Coolant temperature', role: 'ignore' }] };
    const asked = await readCapture(bytesSource('van-before.csv', drive), { choice: null, alwaysAsk: true });
    if (!asked.ok || asked.value.question === null) throw new Error('the capture asks nothing');
    const chosen = choiceFromFile(columnsFileSchema.parse(columns), asked.value.question);
    if (!chosen.ok) throw new Error(chosen.misfit.kind);
    writeFileSync(join(folder, 'columns.json'), JSON.stringify(columns));
    writeFileSync(
      join(folder, 'all.json'),
      JSON.stringify({ columns: [{ name: 'Coolant temperature', role: 'coolant' }] }),
    );
    await bundleOf(vehicle(chosen.choice), 'columns.tailtrace-bundle');
    const roles = async (words: string[]) =>
      reportsOf(await run([...words, '--json']))[0]?.capture.channels.map(({ role }) => role);
    const without = await roles(['columns.tailtrace-bundle']);
    expect(without).toEqual(await roles(['van-before.csv', '--columns', 'columns.json']));
    expect(without).not.toContain('coolant');
    expect(await roles(['columns.tailtrace-bundle', '--columns', 'all.json'])).toContain('coolant');
  });

  test('flags win over the record', async () => {
    const flags = ['--window', '61..121', '--inlet', '290F', '--outlet', '385F', '--trouble-codes', 'P0171'];
    const original = await run(['van-before.csv', '--json', ...flags]);
    const [report] = reportsOf(await run(['van.tailtrace-bundle', '--json', ...flags]));
    const { bundle, ...rest } = report ?? {};
    expect(`${JSON.stringify(rest)}\n`).toBe(original.out);
    expect(bundle?.windows, 'what came with it is compared all the same').toMatchObject([{ id: 'w1', agree: true }]);
  });
});

describe('T-EV-2: a bundle that was changed', () => {
  test.each(['manifest.json', 'record.json', 'sheet.html', 'capture-1'])('in %s is refused by name', async (entry) => {
    const entries = unzipSync(await bundleOf(vehicle(), 'whole.tailtrace-bundle'));
    const bytes = entries[entry] ?? new Uint8Array(0);
    for (const at of [0, bytes.length >> 1, bytes.length - 1]) {
      const changed = { ...entries, [entry]: bytes.map((byte, i) => (i === at ? byte ^ 1 : byte)) };
      writeFileSync(join(folder, 'changed.tailtrace-bundle'), zipSync(changed));
      const { status, out, err } = await run(['changed.tailtrace-bundle', '--json']);
      expect({ status, out }).toEqual({ status: 3, out: '' });
      const name = entry === 'capture-1' ? 'van-before.csv' : entry;
      expect(err).toMatch(/^changed\.tailtrace-bundle: .+\n$/);
      // A manifest that is no manifest any more cannot be compared; it is the one that is said to be unreadable.
      expect(err).toMatch(
        entry === 'manifest.json' ? /manifest/ : new RegExp(`${name.replace('.', '\\.')} was changed`),
      );
    }
  });

  test('anywhere in the archive is refused, or nothing of it is different', async () => {
    const bytes = await bundleOf(vehicle(), 'whole.tailtrace-bundle');
    const whole = await run(['whole.tailtrace-bundle', '--json']);
    for (let at = 7; at < bytes.length; at += Math.floor(bytes.length / 40)) {
      const changed = Uint8Array.from(bytes);
      changed[at] = (changed[at] ?? 0) ^ 4;
      writeFileSync(join(folder, 'whole.tailtrace-bundle'), changed);
      const { status, out, err } = await run(['whole.tailtrace-bundle', '--json']);
      if (status === 0) expect(out).toBe(whole.out);
      else
        expect({ status, out, told: err.startsWith('whole.tailtrace-bundle: ') }).toEqual({
          status: 3,
          out: '',
          told: true,
        });
    }
  });

  test('does not keep other captures from being judged', async () => {
    writeFileSync(
      join(folder, 'cut.tailtrace-bundle'),
      (await bundleOf(vehicle(), 'x.tailtrace-bundle')).subarray(0, 900),
    );
    const said = await run(['cut.tailtrace-bundle', 'van-before.csv', '--json']);
    expect(said.status).toBe(3);
    expect(reportsOf(said)).toHaveLength(1);
  });
});

describe('a bundle', () => {
  test('under any name is known by what it holds', async () => {
    copyFileSync(join(folder, 'van.tailtrace-bundle'), join(folder, 'van.zip'));
    const [report] = reportsOf(await run(['van.zip', '--json']));
    expect(report?.bundle?.file).toBe('van.zip');
  });

  test('says which captures of the record it does not hold', async () => {
    await bundleOf(vehicle(), 'empty.tailtrace-bundle', false);
    const { status, out, err } = await run(['empty.tailtrace-bundle', '--json']);
    expect({ status, out }).toEqual({ status: 0, out: '' });
    expect(err).toBe('van-before.csv: The record names this capture, and the bundle does not hold it.\n');
  });

  test('is described, and reported for people', async () => {
    const described = await run(['van.tailtrace-bundle', '--describe']);
    expect(described).toMatchObject({ status: 0, err: '' });
    expect(described.out).toContain('van-before.csv');
    const { out } = await run(['van.tailtrace-bundle']);
    expect(out).toMatch(/^van\.tailtrace-bundle, Van 14: every file is as it was when the bundle was made/);
    expect(out).toMatch(/SHA-256 of its manifest [0-9a-f]{64}/);
    expect(out).toMatch(/Hold: does not store oxygen \(99\s% sure\); the same here/);
  });

  test('gives the sheet of its own vehicle, with its codes and temperatures', async () => {
    await run(['van.tailtrace-bundle', '--json', '--sheet', 'sheet.md']);
    const sheet = readFileSync(join(folder, 'sheet.md'), 'utf8');
    for (const part of ['Van 14', 'P0420', '500', 'Hold']) expect(sheet).toContain(part);
  });
});
