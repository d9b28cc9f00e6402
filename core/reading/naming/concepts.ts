// Ideas that the name of a channel may hold. A role asks for ideas, never for words, so that the order of words and the
// language do not matter; the words are in one table for each language.

import { ENGLISH } from './wordsEnglish.ts';
import { FRENCH } from './wordsFrench.ts';
import { GERMAN } from './wordsGerman.ts';
import { SPANISH } from './wordsSpanish.ts';

export const CONCEPTS = [
  'oxygenSensor',
  'lambda',
  'fuelToAir',
  'voltage',
  'current',
  'front',
  'rear',
  'catalyst',
  'temperature',
  'sensorHelper',
  'engine',
  'engineSpeed',
  'vehicle',
  'speed',
  'coolant',
  'intakeAir',
  'otherMedium',
  'airFlow',
  'notAir',
  'load',
  'throttle',
  'pedal',
  'shortTrim',
  'longTrim',
  'short',
  'long',
  'trim',
  'fuelStatus',
  'commanded',
  'second',
  'pressure',
  'time',
  'date',
  'notTime',
] as const;

export type Concept = (typeof CONCEPTS)[number];

/**
 * Words of one language: a concept's words divided by bars. A word matches a whole word of the name; a star stands for
 * any letters (`*drehzahl` also finds Motordrehzahl), a dollar for the end of the name; several words match in that order. All in lower case, without
 * accents, as `plainWords` leaves them.
 */
export type Vocabulary = Readonly<Partial<Record<Concept, string>>>;

const LANGUAGES: readonly Vocabulary[] = [ENGLISH, GERMAN, FRENCH, SPANISH];
const PATTERNS = new Map<Concept, RegExp>();
for (const concept of CONCEPTS) {
  const words = LANGUAGES.map((language) => language[concept] ?? '').filter((entry) => entry !== '');
  PATTERNS.set(concept, compile(words.join('|')));
}

function compile(words: string): RegExp {
  const parts = words.split('|').map((word) => word.replaceAll('*', '[a-z0-9]*'));
  return new RegExp(`(?:^| )(?:${parts.join('|')})(?= |$)`);
}

/** The ideas that a name holds. `plain` must come from plainWords. */
export function conceptsIn(plain: string): ReadonlySet<Concept> {
  const found = new Set<Concept>();
  for (const [concept, pattern] of PATTERNS) if (pattern.test(plain)) found.add(concept);
  return found;
}

/** Words that carry no idea. "a" and "d" are kept: A/F is one word of the trade. */
const FILLING = new Set(
  'of the de del du des der die das el la le les los las von vom zum zur and und et y'.split(' '),
);

/**
 * A name as its plain words: lower case, without accents and signs, words that were run together in capitals or with
 * underscores parted ("EngineRPM", "ENGINE_RPM"), letters of other alphabets that the trade uses spelled out.
 */
export function plainWords(name: string): string {
  return name
    .slice(0, 200)
    .replace(/[λΛ]/g, ' lambda ')
    .replace(/[φϕΦ]/g, ' phi ')
    .replace(/ß/g, 'ss')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replace(/([A-Z])([A-Z][a-z]{2})/g, '$1 $2')
    .replace(/([0-9])([A-Z][a-z])/g, '$1 $2')
    .normalize('NFD')
    .replace(/[\u0300-\u036F]/g, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .split(' ')
    .filter((word) => word !== '' && !FILLING.has(word))
    .join(' ');
}
