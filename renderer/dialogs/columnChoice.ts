import type { ColumnGuess } from '../../core/reading/readCapture.ts';
import type { ColumnChoice } from '../../core/record/schema.ts';

/** What the person chose, as it is kept. */
export function choiceOf(headerKey: string, guesses: readonly ColumnGuess[], rateHz: number | null): ColumnChoice {
  const time = guesses.find((guess) => guess.role === 'time');
  return {
    headerKey,
    timeColumn: time?.index ?? null,
    rateHz: time === undefined ? rateHz : null,
    columns: guesses.map(({ index, role, bank, sensor, unit }) => ({ index, role, bank, sensor, unit })),
  };
}
