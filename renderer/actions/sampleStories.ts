// The sample drives come as vehicles of their own, so that they never mix with real ones.

import { newVehicle } from '../../core/record/newVehicle.ts';
import type { CaptureRef, VehicleRecord } from '../../core/record/schema.ts';
import { SAMPLE_DRIVES, type SampleDrive } from '../../core/simulation/sampleDrives/index.ts';

export interface SampleCapture {
  readonly vehicleId: string;
  readonly kind: CaptureRef['kind'];
}

/** The story of a sample drive, by its file name; null for a file that has none. */
export function sampleStory(fileName: string): SampleDrive | null {
  return SAMPLE_DRIVES.find(({ file }) => file === fileName) ?? null;
}

/** Where a sample drive belongs. A drive without a story stands for itself. */
export function sampleCapture(fileName: string): SampleCapture {
  const story = sampleStory(fileName);
  return { vehicleId: sampleVehicleId(story?.vehicle ?? stemOf(fileName)), kind: story?.kind ?? 'other' };
}

/** The invented vehicle of a sample drive, with the codes of its story and without its captures. */
export function sampleVehicle(fileName: string, createdAt: string): VehicleRecord {
  const called = sampleStory(fileName)?.vehicle ?? stemOf(fileName);
  const empty = newVehicle({ id: sampleVehicleId(called), name: `${called} (invented)`, createdAt });
  const codes = SAMPLE_DRIVES.filter(({ vehicle }) => vehicle === called).flatMap(({ troubleCodes }) => troubleCodes);
  return {
    ...empty,
    identity: { ...empty.identity, description: 'A vehicle of our own invention.', rearSensor: 'yes' },
    troubleCodes: Object.fromEntries(
      codes.map((code) => [`sample-${code}`, { id: `sample-${code}`, code, status: 'confirmed' as const }]),
    ),
  };
}

export function isSampleVehicle(vehicleId: string): boolean {
  return vehicleId.startsWith('sample-');
}

function sampleVehicleId(called: string): string {
  return `sample-${called.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`.slice(0, 64);
}

/** A file name without its ending. */
export function stemOf(fileName: string): string {
  return fileName.replace(/\.[^.]+$/, '');
}
