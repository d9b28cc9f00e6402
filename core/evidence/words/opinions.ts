// Words for what readers sign, the same on the screen and on the sheet.

import type { LinkState } from '../../opinions/chain.ts';
import type { OpinionsCompared } from '../../opinions/compareOpinions.ts';
import { confidenceWords } from '../../opinions/confidence.ts';
import type { Disagreement, Opinion, RestingWindow } from '../../record/opinionSchema.ts';
import type { VehicleRecord } from '../../record/schema.ts';
import type { DecimalSign } from '../sheet.ts';
import { KEPT_SPACE, showNumber } from './numbers.ts';
import { instantWords, stretchWords } from './quantities.ts';
import { sureBriefly } from './sure.ts';
import { bankWords, conditionWords, FINDING_WORDS, measureWords, metWords, WINDOW_KIND_WORDS } from './terms.ts';

export const DISAGREEMENT_WORDS: Readonly<Record<Disagreement, string>> = {
  onThreshold: 'it lies on the threshold',
  otherWindow: 'another window should be judged',
  conditionReadOtherwise: 'a condition is read otherwise',
  captureQuality: 'the quality of the capture',
  missedFeature: 'something in the traces was missed',
  outsideKnowledge: 'knowledge from outside the capture',
};

/** Short, beside a sign. */
export const LINK_WORDS: Readonly<Record<LinkState, string>> = {
  whole: 'chain whole',
  beforeBreak: 'chain breaks behind it',
  broken: 'chain broken',
};

/** In a sentence. */
export const LINK_SENTENCES: Readonly<Record<LinkState, string>> = {
  whole: 'Everything that was signed before it is as it was when it was signed.',
  beforeBreak: 'This entry, or one that stood behind it, was changed or taken away after others had signed.',
  broken: 'What was signed before it is not here as it was: something was changed, taken away or put in.',
};

/** What a signature shows and does not show. Whoever signs reads it first, and so does whoever gets the sheet. */
export const SIGNING_SHOWS =
  'Signing joins an opinion to a chain: it carries the hash of the record its signer was given and of the opinion signed before it. So a later change to an older opinion is seen. The last one is vouched for by nobody until the next is signed, or its hash is told on another path.';
export const SIGNING_DOES_NOT_SHOW =
  'It does not show who signed, or when: a name and a clock are only what was typed and set, and whoever can change the files can make a new chain.';

/** "85 % sure: very likely". */
export function sureWords({ confidence }: Pick<Opinion, 'confidence'>): string {
  return `${confidence}${KEPT_SPACE}% sure: ${confidenceWords(confidence)}`;
}

/** Whether it was read blind, or when its reader had looked; null where the opinion came from no blind reading. */
export function lookingWords({ reading }: Pick<Opinion, 'reading'>): string | null {
  if (reading === undefined) return null;
  if (reading.lookedAt === null) return 'blind, signed before looking';
  return `had seen, looked on ${instantWords(reading.lookedAt)}`;
}

/** "Hold, 61.2 to 121.2 s, bank 1, van-before.csv"; a capture that the record does not have goes by its hash. */
export function restingWords(window: RestingWindow, record: VehicleRecord, sign: DecimalSign): string {
  const { kind, startS, endS, bank, captureSha256 } = window;
  const capture = Object.values(record.captures).find(({ sha256 }) => sha256 === captureSha256);
  const name = capture?.name ?? `a capture that is not here (SHA-256 ${captureSha256.slice(0, 12)}…)`;
  return `${WINDOW_KIND_WORDS[kind]}, ${stretchWords(startS, endS, sign)}, ${bankWords(bank)}, ${name}`;
}

/** What the core said of the window at that time: "does not store oxygen, 97 % sure, version 0.1.0". */
export function coreSaidWords({ coreSaid }: RestingWindow, sign: DecimalSign): string {
  if (coreSaid.length === 0) return 'not scored';
  return coreSaid
    .map(({ bank, finding, probabilityNotStoring, coreVersion }) => {
      const sure = sureBriefly(finding, probabilityNotStoring, sign);
      const of = coreSaid.length > 1 ? `${bankWords(bank)}: ` : '';
      return `${of}${FINDING_WORDS[finding].toLowerCase()}${sure === null ? '' : `, ${sure}`}, version ${coreVersion}`;
    })
    .join('; ');
}

/** What differs first between two opinions, a sentence. */
export function differenceSentence({ differs, onlyFirst, onlySecond }: OpinionsCompared, sign: DecimalSign): string {
  switch (differs.kind) {
    case 'window':
      return `They rest on different windows: ${onlyFirst.length} only under the first, ${onlySecond.length} only under the second.`;
    case 'condition':
      return `For the same window the core saw a condition differently: ${conditionWords(differs.id)}, ${metWords(differs.first)} against ${metWords(differs.second)}.`;
    case 'measure': {
      const { words, unit, digits } = measureWords(differs.id);
      const shown = (value: number | null) =>
        value === null ? 'none' : `${showNumber(value, digits, sign)}${unit === '1' ? '' : `${KEPT_SPACE}${unit}`}`;
      return `For the same window the core measured differently, most of all: ${words}, ${shown(differs.first)} against ${shown(differs.second)}.`;
    }
    case 'core':
      return `For the same window and numbers the core said something else: version ${differs.first} against ${differs.second}.`;
    case 'judgement':
      return 'They rest on the same windows, and the core said the same of them: the readers judge differently.';
    case 'confidence':
      return 'They come to the same finding on the same windows, and differ in how sure they are.';
    case 'nothing':
      return 'They come to the same finding on the same windows, equally sure.';
  }
}
