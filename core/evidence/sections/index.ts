import { registry } from '../../registry.ts';
import { captures } from './captures.ts';
import { cautions } from './cautions.ts';
import { comparisons } from './comparisons.ts';
import { leftOut } from './leftOut.ts';
import { notes } from './notes.ts';
import { opinions } from './opinions.ts';
import { papers } from './papers.ts';
import { promises } from './promises.ts';
import { restsOn } from './restsOn.ts';
import { result } from './result.ts';
import { secondReader } from './secondReader.ts';
import type { SectionMaker } from './section.ts';
import { temperatures } from './temperatures.ts';
import { troubleCodes } from './troubleCodes.ts';
import { vehicle } from './vehicle.ts';
import { warranty } from './warranty.ts';
import { windowDetails } from './windowDetails.ts';
import { windows } from './windows.ts';

/** Every section, in the order in which a reader meets them. */
export const SECTIONS: readonly SectionMaker[] = registry('section of the sheet', (section) => section.id, [
  result,
  vehicle,
  troubleCodes,
  captures,
  windows,
  temperatures,
  comparisons,
  notes,
  restsOn,
  promises,
  leftOut,
  cautions,
  warranty,
  papers,
  opinions,
  secondReader,
  windowDetails,
]);
