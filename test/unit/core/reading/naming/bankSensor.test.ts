import { describe, expect, it } from 'vitest';
import { bankSensorIn } from '../../../../../core/reading/naming/bankSensor.ts';

const place = (text: string, single: 'sensor' | 'bank' | 'none' = 'sensor') => {
  const { bank, sensor } = bankSensorIn(text.toLowerCase(), single);
  return [bank, sensor];
};

describe('bank and sensor in a name', () => {
  it.each([
    'B1S2',
    'B1-S2',
    'B1 S2',
    'B1_S2',
    'b1.s2',
    'Bank1Sensor2',
    'Bank 1 Sensor 2',
    'Bank 1, Sensor 2',
    'bank1-sensor2',
    'BANK_1_SENSOR_2',
    'Bank #1 Sensor #2',
    'Bank 1 Sonde 2',
    'Banco 1 Sonda 2',
    'Banc 1 capteur 2',
    'Sensor 2 Bank 1',
    'Sonde 2, Bank 1',
    'S2B1',
    'sensor 2 of bank 1',
    'sonda 2 del banco 1',
    'O2S12',
    'O2 12',
    'HO2S12',
    'o2 sensor 1-2',
    'o2 (1,2)',
    'O2 1/2',
    'Bank 1 O2 Sensor 2',
    'bank 1 oxygen sensor 2',
    '1-2',
    '12',
    'Bank 1 - 2',
  ])('%s is sensor 2 of bank 1', (text) => {
    expect(place(text)).toEqual([1, 2]);
  });

  it.each([
    ['front O2', [null, null]],
    ['O2 sensor 2', [null, 2]],
    ['O2 voltage 1', [null, 1]],
    ['O2 sensor 6', [2, 2]],
    ['O2 bank 2', [2, null]],
    ['Lambdasonde 2', [null, 2]],
    ['engine speed', [null, null]],
  ])('%s says %o', (text, wanted) => {
    expect(place(text)).toEqual(wanted);
  });

  it.each([
    ['STFT1', [1, null]],
    ['stft 2', [2, null]],
    ['STFT B2', [2, null]],
    ['Short term fuel trim - bank 2', [2, null]],
    ['SHRTFT12', [1, 2]],
  ])('of a trim, %s says %o', (text, wanted) => {
    expect(place(text, 'bank')).toEqual(wanted);
  });

  it('numbers converter temperatures like sensors', () => {
    expect(place('CATEMP21', 'none')).toEqual([2, 1]);
    expect(place('Catalyst temperature bank 2 sensor 1', 'none')).toEqual([2, 1]);
    expect(place('Catalyst temperature', 'none')).toEqual([null, null]);
  });
});
