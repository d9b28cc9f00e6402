// The words of the sheet for the record's choices: one dictionary, so that the same thing has the same word throughout.

import type { Bank } from '../../capture/roles.ts';
import { ROLE_FACTS, type Role } from '../../capture/roles.ts';
import { CONDITIONS } from '../../conditions/index.ts';
import type { Finding } from '../../findings/finding.ts';
import { MEASURES } from '../../measures/index.ts';
import type { Brick, CaptureRef, TroubleCode } from '../../record/schema.ts';
import type { WindowKind, WindowOrigin } from '../../windows/window.ts';
import { KEPT_SPACE } from './numbers.ts';

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

/** The kind of a window, and what it was judged as where that is another: a marked stretch is what the engine made of it. */
export function kindWords(kind: WindowKind, judged: WindowKind | null): string {
  const own = WINDOW_KIND_WORDS[kind].toLowerCase();
  if (judged === null || judged === kind) return own;
  return `${own}, judged as ${judged === 'idle' ? 'an' : 'a'} ${WINDOW_KIND_WORDS[judged].toLowerCase()}`;
}

export const WINDOW_ORIGIN_WORDS: Readonly<Record<WindowOrigin, string>> = {
  suggested: 'offered',
  accepted: 'offer accepted',
  changed: 'offer changed by hand',
  byHand: 'marked by hand',
};

export const BRICK_PLACE_WORDS: Readonly<Record<Brick['place'], string>> = {
  closeCoupled: 'close-coupled',
  underfloor: 'underfloor',
  unknown: 'place not recorded',
};

export const CODE_STATUS_WORDS: Readonly<Record<TroubleCode['status'], string>> = {
  confirmed: 'confirmed',
  pending: 'pending',
  permanent: 'permanent',
  unknown: 'not recorded',
};

/** Sign and word of a condition; the three states are never told apart by the sign alone. */
export function metWords(met: boolean | null): string {
  if (met === null) return '– not recorded';
  return met ? '✓ met' : '✗ not met';
}

/** "bank 1", or "whole engine". */
export function bankWords(bank: Bank): string {
  return bank === null ? 'whole engine' : `bank${KEPT_SPACE}${bank}`;
}

/** A role on a bank: "Upstream oxygen sensor, bank 1". */
export function roleWords(role: Role, bank: Bank): string {
  return bank === null ? ROLE_FACTS[role].words : `${ROLE_FACTS[role].words}, ${bankWords(bank)}`;
}

/** Words, unit and most digits of a measure; the id itself for a measure that this version no longer has. */
export function measureWords(id: string): { readonly words: string; readonly unit: string; readonly digits: number } {
  return MEASURES.find((measure) => measure.id === id) ?? { words: id, unit: '1', digits: 3 };
}

/** Words of a condition; the id itself for one that this version no longer has. */
export function conditionWords(id: string): string {
  return CONDITIONS.find((condition) => condition.id === id)?.words ?? id;
}
