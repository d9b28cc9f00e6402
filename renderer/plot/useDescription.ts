import { useEffect, useState } from 'react';
import { FINDING_WORDS } from '../../core/evidence/words/terms.ts';
import type { Stage } from './stage.ts';
import type { ShownNote, ShownWindow, TraceSource } from './traceStackProps.ts';

/** How long the view must rest before it is described anew, ms: a description that changes in a drag helps nobody. */
const REST_MS = 400;

/**
 * What a pane shows, in sentences that follow the view: the stretch, each channel in the core's own words, the windows and
 * notes in it.
 */
export function useDescription(
  stage: Stage,
  source: TraceSource,
  channelIds: readonly string[],
  windows: readonly ShownWindow[],
  notes: readonly ShownNote[],
): string {
  const [words, setWords] = useState('');
  const ids = channelIds.join('\n');
  useEffect(() => {
    let timer = 0;
    let round = 0;
    const describe = async (): Promise<void> => {
      const mine = ++round;
      const { visible } = stage;
      const lines = await source.describe(ids.split('\n'), visible).catch(() => []);
      if (mine !== round) return;
      const from = `From ${stage.moment(visible.startS)} to ${stage.moment(visible.endS)}.`;
      setWords([from, ...lines, ...marksIn(windows, notes, visible)].join(' '));
    };
    const leave = stage.addPlacer(() => {
      window.clearTimeout(timer);
      timer = window.setTimeout(() => void describe(), REST_MS);
    });
    return () => {
      leave();
      round++;
      window.clearTimeout(timer);
    };
  }, [stage, source, ids, windows, notes]);
  return words;
}

function marksIn(
  windows: readonly ShownWindow[],
  notes: readonly ShownNote[],
  visible: { readonly startS: number; readonly endS: number },
): string[] {
  const inside = (startS: number, endS: number): boolean => endS >= visible.startS && startS <= visible.endS;
  const seen = windows.filter((window) => inside(window.startS, window.endS));
  const named = seen.filter((window) => !window.offer).map(windowWords);
  const offers = seen.length - named.length;
  const pinned = notes.filter((note) => inside(note.startS, note.endS ?? note.startS)).map((note) => note.words);
  return [
    ...(named.length > 0 ? [`Windows: ${named.join('; ')}.`] : []),
    ...(offers > 0 ? [`Offers: ${offers}.`] : []),
    ...(pinned.length > 0 ? [`Notes: ${pinned.join('; ')}.`] : []),
  ];
}

function windowWords({ name, finding }: ShownWindow): string {
  return finding === null ? name : `${name}, ${FINDING_WORDS[finding].toLowerCase()}`;
}
