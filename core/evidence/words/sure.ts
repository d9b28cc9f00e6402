// How sure a finding is, in the same words on the screen, on the sheet and in the text report. 'weak' lies between two
// thresholds: a high probability beside it is no contradiction, and the words have to say so.

import { CALIBRATION } from '../../findings/calibration.ts';
import type { Finding } from '../../findings/finding.ts';
import type { DecimalSign } from '../sheet.ts';
import { digitsOf, KEPT_SPACE, probabilityWords, showNumber } from './numbers.ts';

/** Beside a finding that cannot be given: what a number there would be taken for is just what cannot be told. */
export const NOT_GIVEN = 'not given while something stands in the way';

/** The probability as it may be shown beside its finding: null while it cannot be told. 0 to 1. */
export function givenProbability(finding: Finding, probabilityNotStoring: number | null): number | null {
  return finding === 'cannotTell' ? null : probabilityNotStoring;
}

/** One or two sentences: how sure, and for 'weak' from where on one or the other would be said. */
export function sureSentence(finding: Finding, probabilityNotStoring: number | null, sign: DecimalSign): string {
  const probability = givenProbability(finding, probabilityNotStoring);
  if (probability === null) return `The probability is ${NOT_GIVEN}.`;
  if (finding === 'storing') return `${probabilityWords(1 - probability)} sure that it stores oxygen.`;
  if (finding === 'notStoring') return `${probabilityWords(probability)} sure that it does not store oxygen.`;
  return `The probability that it does not store oxygen is ${probabilityWords(probability)}. ${thresholdSentence(sign)}`;
}

/** "97 % sure", in a list; for 'weak' "60 % that it does not store, which is said from 97.5 % on"; null where none is given. */
export function sureBriefly(finding: Finding, probabilityNotStoring: number | null, sign: DecimalSign): string | null {
  const probability = givenProbability(finding, probabilityNotStoring);
  if (probability === null) return null;
  if (finding === 'storing') return `${probabilityWords(1 - probability)} sure`;
  if (finding === 'notStoring') return `${probabilityWords(probability)} sure`;
  return `${probabilityWords(probability)} that it does not store, which is said from ${notStoringFrom(sign)} on`;
}

/** From which probability on what is said. */
export function thresholdSentence(sign: DecimalSign): string {
  const storing = percentWords(CALIBRATION.decided.storingUpTo, sign);
  return `From ${notStoringFrom(sign)} on it is said not to store, up to ${storing} to store; between them stands “stores weakly”.`;
}

/** How the weights of the reasons make the probability. */
export function weightsSentence(sign: DecimalSign): string {
  const { passesFromG, failsUpToG } = CALIBRATION.decided.leftOpen;
  const grams = (value: number): string => `${showNumber(value, digitsOf(value, 2), sign)}${KEPT_SPACE}g`;
  return `Weights are natural logarithms of odds, 0${sign}7 doubles them. Their sum gives the probability, held back a little while the 95${KEPT_SPACE}% interval of the model fit reaches, as for a two-litre engine, above ${grams(passesFromG)}, where converters pass, or below ${grams(failsUpToG)}, where they fail.`;
}

function notStoringFrom(sign: DecimalSign): string {
  return percentWords(CALIBRATION.decided.notStoringFrom, sign);
}

function percentWords(share: number, sign: DecimalSign): string {
  const percent = Number((100 * share).toFixed(1));
  return `${showNumber(percent, digitsOf(percent, 1), sign)}${KEPT_SPACE}%`;
}
