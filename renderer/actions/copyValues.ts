import { ROLE_FACTS } from '../../core/capture/roles.ts';
import { bankWords, measureWords, roleWords } from '../../core/evidence/words/terms.ts';
import type { WindowScore } from '../../core/findings/finding.ts';
import type { Program } from '../program/program.ts';
import { readsBlind, recordOf } from '../state/recordStore.ts';
import { windowScoresOf } from '../state/scoreStore.ts';
import { chosenWindow, shownCapture, shownView } from '../state/selectors/shown.ts';
import { windowName } from '../state/selectors/windowNames.ts';
import { stretchWords } from '../words/captureTimes.ts';

/** Puts the values at the cursor and the measures of the chosen window on the clipboard: tabs between, units in the head. */
export async function copyValues(program: Program): Promise<void> {
  const lines = [...(await cursorLines(program)), ...measureLines(program)];
  if (lines.length === 0) {
    const blind = readsBlind(program.record.getState());
    const nothing = blind
      ? 'Put the cursor on the traces first; measures are hidden while you read blind.'
      : 'Put the cursor on the traces or select a window first.';
    program.notices.getState().say(nothing);
    return;
  }
  await program.shell.copyText({ text: `${lines.map((cells) => cells.map(plain).join('\t')).join('\n')}\n` });
  program.notices.getState().say('Values and measures are on the clipboard.');
}

async function cursorLines(program: Program): Promise<string[][]> {
  const held = shownCapture(program);
  const cursorS = shownView(program)?.cursorS ?? null;
  if (held === null || cursorS === null) return [];
  const { channels } = held.summary;
  const values = await held.source.valuesAt(
    channels.map(({ id }) => id),
    cursorS,
  );
  const rows = channels.map(({ id, name, role, bank, unit }) => {
    const found = values.find((value) => value.channelId === id);
    const digits = ROLE_FACTS[role].digits;
    const value = found?.value == null ? 'not recorded' : found.value.toFixed(digits);
    return [role === 'other' ? name : roleWords(role, bank), value, unit, found?.sampleS?.toFixed(3) ?? 'not recorded'];
  });
  return [['Channel', 'Value', 'Unit', 'Sampled at, s'], ...rows];
}

function measureLines(program: Program): string[][] {
  const window = chosenWindow(program);
  if (window === null) return [];
  const scores = windowScoresOf(program.score.getState().score, window.id);
  return scores.flatMap((score) => [
    [
      `${windowName(window)}, ${stretchWords(window, recordOf(program.record.getState())?.captures[window.captureId]?.durationS)}, ${bankWords(score.bank)}`,
    ],
    ['Measure', 'Value', 'Unit', '95 % from', '95 % to'],
    ...measureRows(score),
  ]);
}

function measureRows({ measures }: WindowScore): string[][] {
  return measures.map(({ id, value, interval, missing }) => {
    const { words, unit, digits } = measureWords(id);
    if (value === null) return [words, missing ?? 'not recorded', unit];
    const ends = interval?.map((end) => end.toFixed(digits)) ?? ['', ''];
    return [words, value.toFixed(digits), unit, ...ends];
  });
}

/** A cell may hold whatever a stranger named a column: no tabs or line ends get through. */
function plain(cell: string): string {
  return cell.replace(/[\t\r\n]+/g, ' ');
}
