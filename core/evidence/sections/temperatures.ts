import type { Reading, Temperature } from '../../record/schema.ts';
import { celsius } from '../../thermal/pairOf.ts';
import type { ThermalReading } from '../../thermal/thermal.ts';
import type { Block, Cell, Column, DecimalSign } from '../sheet.ts';
import { NOT_RECORDED, numberCell, numberOrNone } from '../words/numbers.ts';
import {
  differenceIn,
  instantWords,
  TEMPERATURE_SYMBOLS,
  temperatureIn,
  typedTemperature,
} from '../words/quantities.ts';
import { bankWords } from '../words/terms.ts';
import type { SectionMaker } from './section.ts';

/** Surface temperatures by hand, in the reader's unit and as they were typed, and how each reads. */
export const temperatures: SectionMaker = {
  id: 'temperatures',
  build({ record, score, settings }) {
    const readings = Object.values(record.readings).sort((a, b) => Date.parse(a.takenAt) - Date.parse(b.takenAt));
    if (readings.length === 0) return null;
    const read = new Map(score.thermal.map(({ readingId, reading }) => [readingId, reading]));
    const { temperatureUnit: unit, decimalSign: sign } = settings;
    const sentences = readings.flatMap(({ id }) => read.get(id)?.reading ?? []);
    return {
      id: 'temperatures',
      title: 'Surface temperatures',
      blocks: [
        {
          kind: 'table',
          id: 'temperatures',
          caption: 'Converter inlet and outlet, read by hand, and the rise from one to the other',
          columns: riseColumns(unit),
          rows: readings.map((reading) => riseRow(reading, read.get(reading.id) ?? null, unit, sign)),
        },
        {
          kind: 'table',
          id: 'temperatures.taken',
          caption: 'How they were taken',
          columns: TAKEN_COLUMNS,
          rows: readings.map((reading) => takenRow(reading, sign)),
        },
        ...(sentences.length === 0 ? [] : [{ kind: 'list', items: sentences } satisfies Block]),
        { kind: 'paragraph', tone: 'small', text: WORTH },
      ],
    };
  },
};

const WORTH =
  'Two spots of different finish can differ in reading by more than any converter heats the gas, and a clean engine gives a converter little to burn. Temperature supports a finding and never makes one.';

const right = (id: string, words: string, unit: string | null) => ({ id, words, unit, align: 'right' as const });
const left = (id: string, words: string) => ({ id, words, unit: null, align: 'left' as const });

function riseColumns(unit: Temperature['unit']): Column[] {
  const symbol = TEMPERATURE_SYMBOLS[unit];
  const difference = unit === 'F' ? '°F' : 'K';
  return [
    left('where', 'Where'),
    right('inlet', 'Inlet', symbol),
    right('outlet', 'Outlet', symbol),
    right('rise', 'Rise', difference),
    right('low', '95 % from', difference),
    right('high', 'to', difference),
  ];
}

const TAKEN_COLUMNS: readonly Column[] = [
  left('where', 'Where'),
  left('inletTyped', 'Inlet as typed'),
  left('outletTyped', 'Outlet as typed'),
  right('rpm', 'Engine speed', '1/min'),
  right('emissivity', 'Emissivity set', '1'),
  left('takenAt', 'Taken'),
];

function placeCell({ bank, brick }: Reading): Cell {
  return { kind: 'text', text: brick === null ? bankWords(bank) : `${bankWords(bank)}, converter ${brick}` };
}

function riseRow(reading: Reading, read: ThermalReading | null, unit: Temperature['unit'], sign: DecimalSign): Cell[] {
  const [low, high] = read?.riseInterval ?? [null, null];
  const rise = celsius(reading.outlet) - celsius(reading.inlet);
  const difference = (kelvin: number | null) =>
    kelvin === null ? NOT_RECORDED : numberCell(differenceIn(kelvin, unit), 0, null, sign);
  return [
    placeCell(reading),
    numberCell(temperatureIn(celsius(reading.inlet), unit), 0, null, sign),
    numberCell(temperatureIn(celsius(reading.outlet), unit), 0, null, sign),
    difference(rise),
    difference(low),
    difference(high),
  ];
}

function takenRow(reading: Reading, sign: DecimalSign): Cell[] {
  return [
    placeCell(reading),
    { kind: 'text', text: typedTemperature(reading.inlet, sign) },
    { kind: 'text', text: typedTemperature(reading.outlet, sign) },
    numberOrNone(reading.rpm, 0, null, sign),
    numberOrNone(reading.emissivity, 2, null, sign),
    { kind: 'text', text: instantWords(reading.takenAt) },
  ];
}
