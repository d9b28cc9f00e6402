import type { Capture } from '../capture/capture.ts';
import { MEASURES } from '../measures/index.ts';
import { cutWindow } from '../measures/windowData.ts';
import { banksToJudge } from '../windows/banksToJudge.ts';
import type { CaptureWindow } from '../windows/window.ts';
import { listed } from '../words/numbers.ts';
import type { Comparison, MeasurePair } from './comparison.ts';
import { unlikeBetween } from './unlikeBetween.ts';

/** One side of a comparison. */
export interface ComparedWindow {
  readonly capture: Capture;
  readonly window: CaptureWindow;
}

/**
 * A window over another, of the same capture or of two. Measures side by side, difference second minus first, and first
 * of all what was not alike. A window of no bank is compared by the first bank its capture has.
 */
export function compareWindows(first: ComparedWindow, second: ComparedWindow): Comparison {
  const sides = [first, second].map(({ capture, window }) =>
    cutWindow(capture, window, window.bank ?? banksToJudge(capture)[0] ?? null),
  );
  const [one, two] = sides;
  const pairs: MeasurePair[] = MEASURES.map((measure) => {
    const a = one ? measure.compute(one).value : null;
    const b = two ? measure.compute(two).value : null;
    const { id, words, unit, digits } = measure;
    return { id, words, unit, digits, first: a, second: b, difference: a === null || b === null ? null : b - a };
  });
  const unlike = one && two ? unlikeBetween(one, two) : [];
  return {
    first: first.window,
    second: second.window,
    sentence: sentenceOf(unlike.map(({ words }) => words)),
    unlike,
    pairs,
  };
}

function sentenceOf(unlike: readonly string[]): string {
  if (unlike.length === 0) return 'The conditions of both windows were alike, as far as they were recorded.';
  return `Not alike: ${listed(unlike)}.`;
}
