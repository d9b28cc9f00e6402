// The sample drives come as vehicles of their own, so that they never mix with real ones: which drive belongs to which
// invented vehicle, and what is known of it.

import { newVehicle } from '../../core/record/newVehicle.ts';
import type { CaptureRef, VehicleRecord } from '../../core/record/schema.ts';

interface SampleStory {
  readonly vehicleId: string;
  readonly name: string;
  readonly description: string;
  readonly codes: readonly string[];
  /** What each drive shows, by the beginning of its file name. */
  readonly drives: Readonly<Record<string, CaptureRef['kind']>>;
}

const STORIES: readonly SampleStory[] = [
  {
    vehicleId: 'sample-depot-van',
    name: 'Depot van (invented)',
    description: 'A courier van of our own invention, before and after its repair, with its healthy twin.',
    codes: ['P0420'],
    drives: { 'van-before': 'before', 'van-after': 'after', 'van-twin': 'knownGood' },
  },
  {
    vehicleId: 'sample-trap-van',
    name: 'Second van (invented)',
    description: 'A courier van of our own invention that was sent in for a converter.',
    codes: ['P0420'],
    drives: { 'van-trap': 'before' },
  },
  {
    vehicleId: 'sample-two-banks',
    name: 'Two-bank car (invented)',
    description: 'A car of our own invention with two banks of cylinders.',
    codes: ['P0430'],
    drives: { 'car-two-banks': 'before' },
  },
  {
    vehicleId: 'sample-road-drive',
    name: 'Road drive (invented)',
    description: 'Forty minutes of a van of our own invention, from the cold start on.',
    codes: [],
    drives: { 'road-drive': 'other' },
  },
  {
    vehicleId: 'sample-analogue',
    name: 'Analogue recording (invented)',
    description: 'Two minutes of a fast recorder on a van of our own invention.',
    codes: [],
    drives: { 'analogue-hold': 'before' },
  },
];

export interface SampleCapture {
  readonly vehicleId: string;
  readonly kind: CaptureRef['kind'];
}

/** Where a sample drive belongs, by its file name. A drive without a story stands for itself. */
export function sampleCapture(fileName: string): SampleCapture {
  const stem = stemOf(fileName);
  for (const { vehicleId, drives } of STORIES) {
    const kind = drives[stem];
    if (kind !== undefined) return { vehicleId, kind };
  }
  return { vehicleId: `sample-${stem}`.slice(0, 64), kind: 'other' };
}

/** The invented vehicle of a sample drive, without its captures. */
export function sampleVehicle(fileName: string, createdAt: string): VehicleRecord {
  const { vehicleId } = sampleCapture(fileName);
  const story = STORIES.find((one) => one.vehicleId === vehicleId);
  const empty = newVehicle({ id: vehicleId, name: story?.name ?? `${stemOf(fileName)} (invented)`, createdAt });
  if (story === undefined) return empty;
  const codes = story.codes.map((code) => ({ id: `sample-${code}`, code, status: 'confirmed' as const }));
  return {
    ...empty,
    identity: { ...empty.identity, description: story.description, rearSensor: 'yes' },
    troubleCodes: Object.fromEntries(codes.map((code) => [code.id, code])),
  };
}

/** A file name without its ending. */
export function stemOf(fileName: string): string {
  return fileName.replace(/\.[^.]+$/, '');
}
