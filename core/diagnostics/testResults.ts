import type { TestResult } from '../capture/reported.ts';
import { scaled, unitScaling } from './unitScaling.ts';

const RECORD_BYTES = 9;

/**
 * On-board test results in an answer of service 06 on CAN (SAE J1979): after the service byte, records of nine bytes:
 * monitor, test, unit-and-scaling id, then value, least and most, two bytes each, high first. A test passes when
 * least <= value <= most. A last record that is cut short is left out. Another service gives an empty list.
 */
export function testResultsIn(message: Uint8Array): TestResult[] {
  const results: TestResult[] = [];
  if (message[0] !== 0x46) return results;
  for (let at = 1; at + RECORD_BYTES <= message.length; at += RECORD_BYTES) {
    const view = new DataView(message.buffer, message.byteOffset + at, RECORD_BYTES);
    const scaling = unitScaling(view.getUint8(2));
    const number = (offset: number) => {
      const raw = view.getUint16(offset);
      return scaling ? scaled(scaling, raw) : raw;
    };
    const value = number(3);
    const least = number(5);
    const most = number(7);
    results.push({
      monitor: view.getUint8(0),
      test: view.getUint8(1),
      unit: scaling?.unit ?? null,
      value,
      least,
      most,
      passed: least <= value && value <= most,
    });
  }
  return results;
}

/** Bank of the converter that a monitor watches, or null for a monitor of something else. 21 to 24 are converters. */
export function converterBank(monitor: number): number | null {
  return monitor >= 0x21 && monitor <= 0x24 ? monitor - 0x20 : null;
}
