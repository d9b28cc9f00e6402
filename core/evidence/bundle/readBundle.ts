// Opens a bundle and finds every change since it was made.

import { strFromU8 } from 'fflate';
import { z } from 'zod';
import type { Outcome, Problem } from '../../reading/problem.ts';
import { canonicalJson } from '../../record/canonical.ts';
import { parseGuardedJson } from '../../record/guardedJson.ts';
import { readRecord } from '../../record/readRecord.ts';
import type { VehicleRecord } from '../../record/schema.ts';
import { showControlsOnOneLine } from '../words/showControls.ts';
import {
  BUNDLE_FORMAT,
  BUNDLE_VERSION,
  listedFiles,
  MANIFEST_HASH_NAME,
  MANIFEST_NAME,
  type Manifest,
  manifestSchema,
  RECORD_NAME,
  SHEET_NAME,
} from './manifest.ts';
import { BUNDLE_LIMITS, type UnpackFault, type UnpackLimits, unpackBundle } from './unpackBundle.ts';
import { manifestHash, type Sha256 } from './writeBundle.ts';

/** What is not as the manifest says, by the file's name for people. */
export interface BundleChange {
  readonly name: string;
  readonly what: 'changed' | 'missing' | 'notListed' | 'notOfRecord';
}

export interface OpenedBundle {
  readonly manifest: Manifest;
  readonly manifestSha256: string;
  readonly record: VehicleRecord;
  readonly sheet: string;
  readonly captures: readonly { readonly captureId: string; readonly name: string; readonly bytes: Uint8Array }[];
  /** Set where another version of the core made the numbers: they may come out differently here. */
  readonly otherCore: string | null;
}

const MANIFEST_LIMITS = { characters: 4 * 1024 * 1024, depth: 8 };

/**
 * Opens a bundle. Refused where it is no bundle, where a newer version of the program made it, where a file is not the one
 * that the manifest was made for, is missing or is not listed, and where a capture is not the one that the record names;
 * each such file is named. Never throws for any bytes. `where` is the bundle's name for people, `coreVersion` that of the
 * core here.
 */
export async function readBundle(
  bytes: Uint8Array,
  where: string,
  { sha256, coreVersion }: { readonly sha256: Sha256; readonly coreVersion: string },
  limits: UnpackLimits = BUNDLE_LIMITS,
): Promise<Outcome<OpenedBundle>> {
  const unpacked = unpackBundle(bytes, limits);
  if (!unpacked.ok) {
    const named = nameIn(readManifest(unpacked.before.get(MANIFEST_NAME)), unpacked.entry);
    return refusal(`bundle.${unpacked.why}`, unpackWords(unpacked.why, named), where);
  }
  const { files } = unpacked;
  const manifest = readManifest(files.get(MANIFEST_NAME));
  if (manifest === 'newer') return { ok: false, problem: newerProblem(where) };
  if (manifest === null) return refusal('bundle.noManifest', 'This archive has no manifest that can be read.', where);
  const changes = await findChanges(manifest, files, sha256);
  if (changes.length > 0) return { ok: false, problem: changedProblem(changes, where) };
  const record = readRecord(textOf(files.get(RECORD_NAME)), RECORD_NAME);
  if (!record.ok) return record.problem.id === 'recordTooNew' ? { ok: false, problem: newerProblem(where) } : record;
  if (record.value.newer !== null) return { ok: false, problem: newerProblem(where) };
  const strangers = strangersIn(manifest, record.value.record);
  if (strangers.length > 0) return { ok: false, problem: changedProblem(strangers, where) };
  return {
    ok: true,
    value: {
      manifest,
      manifestSha256: await manifestHash(manifest, sha256),
      record: record.value.record,
      sheet: textOf(files.get(SHEET_NAME)),
      captures: manifest.captures.map(({ captureId, name, path }) => ({
        captureId,
        name,
        bytes: files.get(path) ?? EMPTY,
      })),
      otherCore: manifest.coreVersion === coreVersion ? null : manifest.coreVersion,
    },
  };
}

const EMPTY = new Uint8Array(0);

/** Compares every file with the manifest, and the manifest with its own canonical form. */
async function findChanges(
  manifest: Manifest,
  files: ReadonlyMap<string, Uint8Array>,
  sha256: Sha256,
): Promise<BundleChange[]> {
  const changes: BundleChange[] = [];
  const listed = listedFiles(manifest);
  for (const { path, name, bytes, sha256: expected } of listed) {
    const found = files.get(path);
    if (found === undefined) changes.push({ name, what: 'missing' });
    else if (found.length !== bytes || (await sha256(found)) !== expected) changes.push({ name, what: 'changed' });
  }
  const known = new Set([MANIFEST_NAME, MANIFEST_HASH_NAME, ...listed.map(({ path }) => path)]);
  for (const path of files.keys()) if (!known.has(path)) changes.push({ name: path, what: 'notListed' });
  const twice = known.size !== listed.length + 2;
  const ownHash = textOf(files.get(MANIFEST_HASH_NAME));
  const rehashed = ownHash !== `${await manifestHash(manifest, sha256)}\n`;
  const rewritten = textOf(files.get(MANIFEST_NAME)) !== canonicalJson(manifest);
  if (twice || rewritten || rehashed || manifest.recordCanonicalSha256 !== manifest.record.sha256) {
    changes.push({ name: MANIFEST_NAME, what: 'changed' });
  }
  return changes;
}

/** Captures that the record does not name, or names with another hash: whoever made this did not make it here. */
function strangersIn({ captures }: Manifest, record: VehicleRecord): BundleChange[] {
  const named = new Map(Object.values(record.captures).map(({ id, sha256 }) => [id, sha256]));
  return captures
    .filter(({ captureId, sha256 }) => named.get(captureId) !== sha256)
    .map(({ name }) => ({ name, what: 'notOfRecord' }));
}

/** What people call an entry, as far as the manifest can still tell. */
function nameIn(manifest: Manifest | 'newer' | null, entry: string | null): string | null {
  if (manifest === null || manifest === 'newer') return entry;
  return listedFiles(manifest).find(({ path }) => path === entry)?.name ?? entry;
}

function readManifest(bytes: Uint8Array | undefined): Manifest | 'newer' | null {
  const json = parseGuardedJson(textOf(bytes), MANIFEST_LIMITS);
  if (!json.ok) return null;
  const read = manifestSchema.safeParse(json.value);
  if (read.success) return read.data;
  return newerSchema.safeParse(json.value).success ? 'newer' : null;
}

/** All that is asked of a manifest of a later form. */
const newerSchema = z.looseObject({ format: z.literal(BUNDLE_FORMAT), version: z.number().gt(BUNDLE_VERSION) });

function textOf(bytes: Uint8Array | undefined): string {
  return bytes === undefined ? '' : strFromU8(bytes);
}

function changedProblem(changes: readonly BundleChange[], where: string): Problem {
  const words: Record<BundleChange['what'], string> = {
    changed: 'was changed',
    missing: 'is missing',
    notListed: 'is not listed',
    notOfRecord: 'is not the capture that the record names',
  };
  const told = changes.map(({ name, what }) => `${showControlsOnOneLine(name)} ${words[what]}`);
  return {
    id: 'bundle.changed',
    what: `This bundle is not as it was made: ${told.join(', ')}.`,
    where,
    doNext: 'Ask for the bundle again, and compare the hash of its manifest on another path.',
  };
}

const newerProblem = (where: string): Problem => ({
  id: 'bundle.newer',
  what: 'A newer version of Tailtrace made this bundle, and this version does not understand all of it.',
  where,
  doNext: 'Open it with that newer version, or ask for the captures and the evidence sheet as files.',
});

function unpackWords(why: UnpackFault, entry: string | null): string {
  const named = entry === null ? 'a file in it' : `"${showControlsOnOneLine(entry).slice(0, 60)}"`;
  const words: Record<UnpackFault, string> = {
    notZip: 'This file is not a bundle.',
    foreignName: `This archive holds ${named}, which no bundle holds.`,
    twice: `This archive holds ${named} twice.`,
    tooLarge: `This archive unpacks to more than a bundle may hold, at ${named}.`,
    tooMany: 'This archive holds more files than a bundle may.',
    foreignPacking: `In this archive ${named} is packed in a way no bundle uses.`,
    damaged: `This archive is damaged at ${named}.`,
    cut:
      entry === null
        ? 'This archive is cut off, or something was hung on behind it.'
        : `This archive is cut off in ${named}.`,
  };
  return words[why];
}

function refusal(id: string, what: string, where: string): Outcome<OpenedBundle> {
  return { ok: false, problem: { id, what, where, doNext: 'Ask for the bundle again, or choose another file.' } };
}
