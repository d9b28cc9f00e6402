import type { Capture } from '../capture/capture.ts';
import { MEASURES } from '../measures/index.ts';
import type { MeasureValue } from '../measures/measure.ts';
import { cutWindow } from '../measures/windowData.ts';
import { differenceInterval } from '../statistics/differenceInterval.ts';
import { banksToJudge } from '../windows/banksToJudge.ts';
import { withKind } from '../windows/kindOf.ts';
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
    cutWindow(capture, withKind(capture, window), window.bank ?? banksToJudge(capture)[0] ?? null),
  );
  const [one, two] = sides;
  const apart = first.capture !== second.capture || !overlapOf(first.window, second.window);
  const pairs: MeasurePair[] = MEASURES.map((measure) => {
    const a = one ? measure.compute(one) : null;
    const b = two ? measure.compute(two) : null;
    const [earlier, later] = [a?.value ?? null, b?.value ?? null];
    const { id, words, unit, digits } = measure;
    const difference = earlier === null || later === null ? null : later - earlier;
    const interval = apart ? intervalBetween(a, b) : null;
    return { id, words, unit, digits, first: earlier, second: later, difference, interval };
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

function overlapOf(one: CaptureWindow, two: CaptureWindow): boolean {
  return one.startS < two.endS && two.startS < one.endS;
}

function intervalBetween(a: MeasureValue | null, b: MeasureValue | null): MeasurePair['interval'] {
  if (!a?.interval || !b?.interval || a.value === null || b.value === null) return null;
  return differenceInterval({ value: a.value, interval: a.interval }, { value: b.value, interval: b.interval });
}

function sentenceOf(unlike: readonly string[]): string {
  if (unlike.length === 0) return 'The conditions of both windows were alike, as far as they were recorded.';
  return `Not alike: ${listed(unlike)}.`;
}
