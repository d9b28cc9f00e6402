import type { Bank } from '../capture/roles.ts';
import { byteAt, type DataItem, type DataValue, type SensorPlacement, wordAt } from './dataItem.ts';

/** Which bank and sensor the eight oxygen items of a block stand for. */
function placeOf(index: number, placement: SensorPlacement): { bank: number; sensor: number } {
  const perBank = placement === 'twoBanks' ? 4 : 2;
  return { bank: Math.floor(index / perBank) + 1, sensor: (index % perBank) + 1 };
}

/** Banks 3 and 4 exist in the standard but in no capture we can judge: their channels keep their values without a role. */
function roleFor(bank: number, sensor: number, wideband: boolean): Pick<DataValue, 'role' | 'bank' | 'sensor'> {
  if (bank !== 1 && bank !== 2) return { role: 'other', bank: null, sensor };
  const known: Bank = bank;
  if (sensor > 1) return { role: wideband ? 'other' : 'downstreamO2', bank: known, sensor };
  return { role: wideband ? 'upstreamLambda' : 'upstreamO2', bank: known, sensor };
}

/**
 * The oxygen-sensor data items: 14 to 1B (volts and trim), 24 to 2B (lambda and volts), 34 to 3B (lambda and
 * current). Volts A/200, so 5 mV a step; trim byte FF means that this sensor is not used for trim; lambda
 * (256 A + B) * 2 / 65536; current (256 C + D) / 256 - 128 mA. SAE J1979; checked against bytes decoded elsewhere.
 */
export function oxygenItems(placement: SensorPlacement): DataItem[] {
  const items: DataItem[] = [];
  for (let index = 0; index < 8; index++) {
    const { bank, sensor } = placeOf(index, placement);
    const spot = `B${bank}S${sensor}`;
    const words = `bank ${bank} sensor ${sensor}`;
    const switching = roleFor(bank, sensor, false);
    const wideband = roleFor(bank, sensor, true);
    const plain = { role: 'other', bank: switching.bank, sensor } as const;
    items.push({
      pid: 0x14 + index,
      bytes: 2,
      values: [
        {
          key: `o2${spot}`,
          name: `Oxygen sensor, ${words}`,
          unit: 'V',
          ...switching,
          decode: (d) => byteAt(d, 0) / 200,
        },
        { key: `o2Trim${spot}`, name: `Trim by oxygen sensor, ${words}`, unit: '%', ...plain, decode: trimOrNull },
      ],
    });
    items.push({
      pid: 0x24 + index,
      bytes: 4,
      values: [
        { key: `lambda${spot}`, name: `Lambda, ${words}`, unit: '1', ...wideband, decode: lambda },
        { key: `volts${spot}`, name: `Wideband voltage, ${words}`, unit: 'V', ...plain, decode: widebandVolts },
      ],
    });
    items.push({
      pid: 0x34 + index,
      bytes: 4,
      values: [
        { key: `lambda${spot}`, name: `Lambda, ${words}`, unit: '1', ...wideband, decode: lambda },
        { key: `current${spot}`, name: `Wideband current, ${words}`, unit: 'mA', ...plain, decode: milliamperes },
      ],
    });
  }
  return items;
}

const trimOrNull = (data: Uint8Array) => (byteAt(data, 1) === 0xff ? null : ((byteAt(data, 1) - 128) * 100) / 128);
const lambda = (data: Uint8Array) => (wordAt(data, 0) * 2) / 65536;
const widebandVolts = (data: Uint8Array) => (wordAt(data, 2) * 8) / 65536;
const milliamperes = (data: Uint8Array) => wordAt(data, 2) / 256 - 128;
