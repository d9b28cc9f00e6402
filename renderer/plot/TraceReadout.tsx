import { useLayoutEffect, useRef } from 'react';
import type { ChannelSummary } from '../../core/bridge/coreMessages.ts';
import { differenceWords, numberWords, withUnit } from '../words/numbers.ts';
import { valueDigits } from './paneWords.ts';
import type { Readings } from './readings.ts';
import type { ShownUnit } from './shownUnit.ts';
import type { Stage } from './stage.ts';

interface TraceReadoutProps {
  readonly stage: Stage;
  readonly readings: Readings;
  readonly readingKey: string;
  readonly channel: ChannelSummary;
  readonly shown: ShownUnit;
}

const NO_SAMPLE = 'no sample';
/** Width of these words in widths of a figure; letters are narrower. */
const NO_SAMPLE_CH = 8;

/**
 * The value of one channel under the cursor, with the time of its sample where that is not the cursor's, and the
 * difference to the second cursor. Written past React: it changes with every move of the hand.
 */
export function TraceReadout(props: TraceReadoutProps) {
  const { stage, readings, readingKey, channel, shown } = props;
  const value = useRef<HTMLSpanElement>(null);
  const difference = useRef<HTMLSpanElement>(null);
  const age = useRef<HTMLSpanElement>(null);

  useLayoutEffect(() => {
    const write = (): void => {
      const words = readoutWords(stage, readings, readingKey, channel, shown);
      if (value.current !== null) value.current.textContent = words.value;
      if (difference.current !== null) difference.current.textContent = words.difference;
      if (age.current === null) return;
      age.current.textContent = words.age;
      // Room for the sample's own time where one sample is wider than a pixel, so that it comes and goes without a jolt.
      age.current.classList.toggle('kept', slowerThanPixels(stage, channel));
    };
    write();
    return readings.onChange(write);
  }, [stage, readings, readingKey, channel, shown]);

  return (
    <>
      <span ref={value} className="traceValue" style={{ minWidth: `${widestValue(channel, shown)}ch` }} />
      <span ref={age} className="traceAge" />
      <span ref={difference} className="traceDifference" />
    </>
  );
}

function readoutWords(stage: Stage, readings: Readings, key: string, channel: ChannelSummary, shown: ShownUnit) {
  const here = readings.at(key);
  const there = readings.atSecondCursor(key);
  const digits = valueDigits(channel);
  if (here === null) return { value: '', age: '', difference: '' };
  if (here.value === null) return { value: NO_SAMPLE, age: '', difference: '' };
  const value = shown.toShown(here.value);
  const other = there === null || there.value === null ? null : shown.toShown(there.value);
  return {
    value: withUnit(value, shown.unit, digits),
    age: here.sampleS === null || !apart(stage, here.sampleS) ? '' : `at ${stage.moment(here.sampleS)}`,
    difference: other === null ? '' : `Δ ${differenceWords(other - value, digits)}`,
  };
}

/** Whether a sample lies more than a pixel before the cursor, so that its own time is worth saying. */
function apart(stage: Stage, sampleS: number): boolean {
  return stage.cursorS !== null && stage.scale !== null && stage.cursorS - sampleS > stage.scale.secondsPerPixel;
}

function slowerThanPixels(stage: Stage, { facts }: ChannelSummary): boolean {
  return stage.scale !== null && facts.medianRateHz * stage.scale.secondsPerPixel < 1;
}

/** Characters of the widest value of the channel, so that nothing moves while the cursor does. */
function widestValue(channel: ChannelSummary, shown: ShownUnit): number {
  const digits = valueDigits(channel);
  const { min, max } = channel.facts;
  const lengths = [min, max].map((value) => numberWords(shown.toShown(value), digits).length);
  const unit = shown.unit === '1' ? 0 : shown.unit.length + 1;
  return Math.max(NO_SAMPLE_CH, Math.max(...lengths) + unit);
}
