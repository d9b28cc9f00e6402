// Large invented captures for the measurements of reading, written once into .cache/bench. One hour at 1 kHz is 3.6 million
// rows of six columns and about 150 MB; the other layouts hold half of the rows.

import { closeSync, existsSync, mkdirSync, openSync, renameSync, statSync, writeSync } from 'node:fs';
import { join } from 'node:path';

const FOLDER = join('.cache', 'bench');
const ROWS_AT_ONCE = 20_000;

/** A layout of the same invented hour. */
export interface LargeCapture {
  readonly name: string;
  readonly words: string;
  readonly rows: number;
  readonly header: string;
  row(i: number): string;
}

/** Values of six columns: time, two oxygen sensors, engine speed, air flow, coolant. */
function valuesAt(i: number): readonly [string, string, string, string, string, string] {
  const t = i / 1000;
  // A cheap hash in place of noise: the same on every machine, and different from row to row.
  const noise = ((Math.imul(i, 2_654_435_761) >>> 8) & 0xffff) / 0xffff - 0.5;
  const front = 0.45 + 0.4 * Math.sin(9 * t) + 0.02 * noise;
  const rear = 0.62 + 0.05 * Math.sin(1.3 * t) + 0.01 * noise;
  return [
    t.toFixed(3),
    front.toFixed(4),
    rear.toFixed(4),
    (2200 + 60 * Math.sin(0.11 * t) + 8 * noise).toFixed(2),
    (12 + noise).toFixed(3),
    (88 + 2 * Math.sin(t / 500)).toFixed(1),
  ];
}

const HEADER = [
  'Time (s)',
  'O2 B1S1 (V)',
  'O2 B1S2 (V)',
  'Engine speed (1/min)',
  'Mass air flow (g/s)',
  'Coolant (°C)',
];
const HOUR = 3_600_000;
const PART = 1_800_000;

function clock(i: number): string {
  const ms = i % 1000;
  const s = Math.floor(i / 1000);
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${two(8 + Math.floor(s / 3600))}:${two(Math.floor(s / 60) % 60)}:${two(s % 60)}.${String(ms).padStart(3, '0')}`;
}

export const HOUR_CAPTURE: LargeCapture = {
  name: 'hour.csv',
  words: 'commas, one hour at 1 kHz, six columns',
  rows: HOUR,
  header: HEADER.join(','),
  row: (i) => valuesAt(i).join(','),
};

export const OTHER_LAYOUTS: readonly LargeCapture[] = [
  {
    name: 'decimal-commas.csv',
    words: 'semicolons with decimal commas',
    rows: PART,
    header: HEADER.join(';'),
    row: (i) => valuesAt(i).join(';').replaceAll('.', ','),
  },
  { name: 'tabs.tsv', words: 'tabs', rows: PART, header: HEADER.join('\t'), row: (i) => valuesAt(i).join('\t') },
  {
    name: 'clock.csv',
    words: 'clock times',
    rows: PART,
    header: HEADER.join(',').replace('Time (s)', 'Clock'),
    row: (i) => [clock(i), ...valuesAt(i).slice(1)].join(','),
  },
  {
    name: 'long.csv',
    words: 'one row for each value',
    rows: PART,
    header: 'time (s),name,value',
    row: (i) => {
      const [time, ...values] = valuesAt(i);
      const channel = i % 5;
      return `${time},${HEADER[channel + 1] ?? ''},${values[channel] ?? ''}`;
    },
  },
];

/** Writes the capture if it is not there yet; returns its path and its size in bytes. */
export function writeLargeCapture(capture: LargeCapture): { readonly path: string; readonly bytes: number } {
  const path = join(FOLDER, capture.name);
  if (!existsSync(path)) {
    mkdirSync(FOLDER, { recursive: true });
    const file = openSync(`${path}.part`, 'w');
    writeSync(file, `${capture.header}\n`);
    for (let start = 0; start < capture.rows; start += ROWS_AT_ONCE) {
      const rows = Array.from({ length: Math.min(ROWS_AT_ONCE, capture.rows - start) }, (_, k) =>
        capture.row(start + k),
      );
      writeSync(file, `${rows.join('\n')}\n`);
    }
    closeSync(file);
    renameSync(`${path}.part`, path);
  }
  return { path, bytes: statSync(path).size };
}
