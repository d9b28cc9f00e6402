import type { Channel } from '../capture/channel.ts';
import { findUnit } from '../units/findUnit.ts';
import type { FinishedCapture } from './finishCapture.ts';
import type { RawChannel } from './rawChannel.ts';
import type { ColumnGuess, ColumnQuestion } from './readCapture.ts';

/** What the question shows besides the guesses. */
export interface QuestionGround {
  readonly headerKey: string;
  readonly preview: readonly (readonly string[])[];
  readonly channels: readonly RawChannel[];
  /** Columns that are no channels: times, and those left out. */
  readonly others: readonly ColumnGuess[];
  readonly needsRate: boolean;
  /** A person wants to look at the columns although all of them are certain. */
  readonly alwaysAsk: boolean;
}

const PREVIEW_ROWS = 12;
const PREVIEW_COLUMNS = 64;
const PREVIEW_CELL = 40;

/** The question to the person, or null where everything is certain enough and nobody asked to see it. */
export function questionFor(finished: FinishedCapture, ground: QuestionGround): ColumnQuestion | null {
  const doubts: string[] = [];
  if (ground.needsRate) doubts.push('The file has no times; how many rows a second were recorded?');
  const { channels } = finished.capture;
  const unsure = finished.guesses.filter((guess) => !guess.certain).length;
  if (finished.guesses.some((guess) => guess.questioned !== null))
    doubts.push('The values of a channel contradict its name.');
  else if (unsure > 0) doubts.push(`${unsure === 1 ? 'One channel is' : `${unsure} channels are`} not certain.`);
  else if (channels.some(({ role }) => role !== 'other') && mayHideSensor(channels)) {
    doubts.push('No oxygen sensor was found by its name, but a channel has values like one.');
  }
  if (channels.every(({ role }) => role === 'other')) doubts.push('No channel could be told by its name.');
  if (doubts.length === 0 && !ground.alwaysAsk) return null;
  return {
    headerKey: ground.headerKey,
    preview: cutPreview(ground.preview),
    guesses: [...ground.others, ...finished.guesses.map((guess, i) => guessOf(ground.channels[i], guess))].sort(
      (a, b) => a.index - b.index,
    ),
    words: doubts.length === 0 ? 'Every column is certain.' : doubts.join(' '),
    needsRate: ground.needsRate,
  };
}

/** No channel is an oxygen sensor, and one that is nothing else swings as one does. Common practice, no source. */
function mayHideSensor(channels: readonly Channel[]): boolean {
  const sensors = ['upstreamO2', 'upstreamLambda', 'downstreamO2'];
  if (channels.some(({ role }) => sensors.includes(role))) return false;
  return channels.some(({ role, unit, facts }) => {
    const inVolts = unit === 'V' || unit === '1';
    return (
      role === 'other' && inVolts && facts.min > -0.2 && facts.max > 0.4 && facts.max < 1.3 && facts.resolution < 0.1
    );
  });
}

/** At most 12 rows of 64 cells of 40 characters. */
export function cutPreview(rows: readonly (readonly string[])[]): string[][] {
  return rows
    .slice(0, PREVIEW_ROWS)
    .map((row) => row.slice(0, PREVIEW_COLUMNS).map((cell) => cell.slice(0, PREVIEW_CELL)));
}

function guessOf(channel: RawChannel | undefined, guess: FinishedCapture['guesses'][number]): ColumnGuess {
  let min: number | null = null;
  let max: number | null = null;
  for (const value of channel?.values ?? []) {
    if (Number.isNaN(value)) continue;
    if (min === null || value < min) min = value;
    if (max === null || value > max) max = value;
  }
  return {
    index: channel?.index ?? 0,
    name: channel?.name ?? '',
    ...(channel?.heading === undefined ? {} : { heading: channel.heading }),
    unit: guess.unit === null ? null : (findUnit(guess.unit)?.symbol ?? guess.unit),
    role: guess.role,
    bank: guess.bank,
    sensor: guess.sensor,
    certain: guess.certain,
    because: guess.because,
    min,
    max,
  };
}
