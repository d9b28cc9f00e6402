// A long recording for measurements: four channels at 1000 rows a second in a measurement file with 8 bytes a row, so
// that ten hours are 288 MB on disk. The same waves at any length.

import { writeFile } from 'node:fs/promises';
import { writeMdf4 } from '../support/writeMdf4.ts';

const RATE_HZ = 1000;
const ROW_BYTES = 8;

/** Raw value of each channel is a whole number of these steps. */
const STEP = { volts: 0.0001, rpm: 0.25, coolant: 0.01 } as const;

/** Writes `rows` rows to `place`. */
export async function writeLongDrive(place: string, rows: number): Promise<void> {
  const records = new Uint8Array(rows * ROW_BYTES);
  const view = new DataView(records.buffer);
  let noise = 12_345;
  for (let row = 0; row < rows; row++) {
    const timeS = row / RATE_HZ;
    noise = (Math.imul(noise, 1_664_525) + 1_013_904_223) >>> 0;
    const jitter = (noise >>> 16) / 65_536 - 0.5;
    const front = 0.45 + 0.37 * Math.tanh(3 * Math.sin(timeS * 6.9)) + 0.03 * jitter;
    const rear = 0.62 + 0.06 * Math.sin(timeS / 19) + 0.02 * jitter;
    const rpm = 2250 + 200 * Math.sin(timeS / 31) + 40 * jitter;
    const coolant = 90 - 55 * Math.exp(-timeS / 120);
    view.setUint16(row * ROW_BYTES, Math.round(front / STEP.volts), true);
    view.setUint16(row * ROW_BYTES + 2, Math.round(rear / STEP.volts), true);
    view.setUint16(row * ROW_BYTES + 4, Math.round(rpm / STEP.rpm), true);
    view.setUint16(row * ROW_BYTES + 6, Math.round(coolant / STEP.coolant), true);
  }
  const field = (name: string, unit: string, byteOffset: number, step: number) => ({
    name,
    unit,
    dataType: 0,
    bitCount: 16,
    byteOffset,
    conversion: { type: 1, values: [0, step] },
  });
  const fields = [
    {
      name: 'time',
      unit: 's',
      dataType: 0,
      bitCount: 0,
      byteOffset: 0,
      type: 3,
      conversion: { type: 1, values: [0, 1 / RATE_HZ] },
    },
    field('O2 B1S1', 'V', 0, STEP.volts),
    field('O2 B1S2', 'V', 2, STEP.volts),
    field('Engine speed', '1/min', 4, STEP.rpm),
    field('Coolant temperature', '°C', 6, STEP.coolant),
  ];
  await writeFile(
    place,
    writeMdf4({ groups: [{ dataBytes: ROW_BYTES, cycles: rows, fields }], records, dataLast: true }),
  );
}
