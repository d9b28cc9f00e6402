import type { Brick } from '../../record/schema.ts';
import { privateCell, vinCell } from '../privacy.ts';
import type { Block, Cell, DecimalSign, Fact } from '../sheet.ts';
import { NOT_RECORDED, numberCell, numberOrNone, textCell } from '../words/numbers.ts';
import { instantWords } from '../words/quantities.ts';
import { BRICK_PLACE_WORDS, bankWords } from '../words/terms.ts';
import type { SectionMaker } from './section.ts';

/** Who and what: the vehicle, how its exhaust is laid out, who made the sheet and when. */
export const vehicle: SectionMaker = {
  id: 'vehicle',
  build({ record, settings }) {
    const { identity } = record;
    const { decimalSign: sign, include } = settings;
    const facts: Fact[] = [
      fact('name', 'Vehicle', textCell(identity.name)),
      fact('description', 'Description', textCell(identity.description)),
      fact('modelYear', 'Model year', yearCell(identity.modelYear)),
      fact('mileage', 'Mileage', mileageCell(identity.mileage, sign)),
      fact('engineLitres', 'Engine displacement', numberOrNone(identity.engineLitres, 1, 'L', sign)),
      fact('firstSold', 'First sold', textCell(identity.firstSold ?? '')),
      fact('vin', 'Vehicle number', vinCell(identity.vin, include.vin)),
      fact('plate', 'Number plate', privateCell(identity.plate, include.plate)),
      fact('customer', 'Customer', privateCell(identity.customer, include.customer)),
      fact('complaint', 'Complaint', privateCell(identity.complaint, include.complaint)),
      fact('rearSensor', 'Oxygen sensor behind the converter', textCell(REAR_SENSOR[identity.rearSensor])),
      fact('reader', 'Read by', textCell(settings.reader)),
      fact('madeAt', 'Sheet made', textCell(instantWords(settings.madeAt))),
    ];
    return {
      id: 'vehicle',
      title: 'Vehicle',
      blocks: [{ kind: 'facts', id: 'vehicle', facts }, ...exhaust(record.bricks)],
    };
  },
};

const REAR_SENSOR = { yes: 'yes', no: 'no', unknown: '' } as const;

function fact(id: string, words: string, value: Cell): Fact {
  return { id, words, value };
}

/** A year is a name and not a count: no decimal sign, no groups. */
export function yearCell(year: number | null): Cell {
  return year === null ? NOT_RECORDED : { kind: 'number', value: year, shown: String(year), unit: null };
}

/** A mileage in the unit it was read in. */
export function mileageCell(mileage: { value: number; unit: 'km' | 'mi' } | null, sign: DecimalSign): Cell {
  return mileage === null ? NOT_RECORDED : numberCell(mileage.value, 0, mileage.unit, sign);
}

function exhaust(bricks: Readonly<Record<string, Brick>>): Block[] {
  const sorted = Object.values(bricks).sort((a, b) => (a.bank ?? 0) - (b.bank ?? 0) || a.position - b.position);
  if (sorted.length === 0) return [];
  return [
    { kind: 'subheading', level: 3, text: 'Converters along the exhaust' },
    { kind: 'list', items: sorted.map(brickWords) },
  ];
}

function brickWords({ bank, position, place, beforeRearSensor }: Brick): string {
  const seen = beforeRearSensor ? 'ahead of the downstream sensor' : 'behind the downstream sensor, so not seen by it';
  return `${bankWords(bank)}, converter ${position}: ${BRICK_PLACE_WORDS[place]}, ${seen}`;
}
