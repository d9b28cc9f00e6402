// One dictionary: the same thing has the same word on every screen.

import type { Finding } from '../../core/findings/finding.ts';
import type { Brick, CaptureRef, Temperature, TroubleCode } from '../../core/record/schema.ts';
import type { WindowKind, WindowOrigin } from '../../core/windows/window.ts';
import { KEPT_SPACE, numberWords } from './numbers.ts';

export const FINDING_WORDS: Readonly<Record<Finding, string>> = {
  storing: 'Stores oxygen',
  weak: 'Stores weakly',
  notStoring: 'Does not store oxygen',
  cannotTell: 'Cannot tell yet',
};

export const CAPTURE_KIND_WORDS: Readonly<Record<CaptureRef['kind'], string>> = {
  before: 'Before repair',
  after: 'After repair',
  knownGood: 'Known good',
  other: 'Other',
};

export const WINDOW_KIND_WORDS: Readonly<Record<WindowKind, string>> = {
  hold: 'Hold',
  cruise: 'Cruise',
  idle: 'Idle',
  snap: 'Snap',
  fuelCut: 'Fuel cut',
  mixed: 'Stretch',
};

export const WINDOW_ORIGIN_WORDS: Readonly<Record<WindowOrigin, string>> = {
  suggested: 'offered',
  accepted: 'offer accepted',
  changed: 'offer changed',
  byHand: 'marked by hand',
};

export const BRICK_PLACE_WORDS: Readonly<Record<Brick['place'], string>> = {
  closeCoupled: 'Close-coupled',
  underfloor: 'Underfloor',
  unknown: 'Place not known',
};

export const CODE_STATUS_WORDS: Readonly<Record<TroubleCode['status'], string>> = {
  confirmed: 'Confirmed',
  pending: 'Pending',
  permanent: 'Permanent',
  unknown: 'Not said',
};

export function bankWords(bank: 1 | 2 | null): string {
  return bank === null ? 'whole engine' : `bank${KEPT_SPACE}${bank}`;
}

export const TEMPERATURE_UNITS: Readonly<Record<Temperature['unit'], string>> = { C: '°C', F: '°F', K: 'K' };

/** As it was typed, in the unit it was typed in. */
export function temperatureWords(temperature: Temperature): string {
  const digits = Number.isInteger(temperature.value) ? 0 : 1;
  return `${numberWords(temperature.value, digits)}${KEPT_SPACE}${TEMPERATURE_UNITS[temperature.unit]}`;
}
