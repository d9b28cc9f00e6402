import { useEffect, useState } from 'react';
import type { CaptureOutline } from '../../core/bridge/coreMessages.ts';
import { countWords, KEPT_SPACE, numberWords } from '../words/numbers.ts';
import { fullTraceWords } from './paneWords.ts';
import { countSwitches } from './switchCount.ts';
import type { TraceSource } from './traceStackProps.ts';

interface DifferenceLineProps {
  readonly capture: CaptureOutline;
  readonly source: TraceSource;
  readonly channelIds: readonly string[];
  readonly cursorS: number;
  readonly secondCursorS: number;
  readonly digits: number;
  onDrop(): void;
}

/** How long both cursors must rest before switches are counted between them, ms. */
const REST_MS = 150;

/** What lies between the two cursors: the time, and how often each oxygen sensor switches. Differences of values stand in
 * the heads of the panes. */
export function DifferenceLine(props: DifferenceLineProps) {
  const { capture, cursorS, secondCursorS, digits, onDrop } = props;
  const switches = useSwitches(props);
  const seconds = numberWords(secondCursorS - cursorS, digits);
  return (
    <p className="differenceLine">
      <span className="differenceTime">
        Second cursor {secondCursorS >= cursorS ? '+' : ''}
        {seconds}
        {KEPT_SPACE}s
      </span>
      {switches.map(({ channelId, words }) => {
        const channel = capture.channels.find(({ id }) => id === channelId);
        return channel === undefined ? null : (
          <span key={channelId}>
            {fullTraceWords(channel, capture)}: {words}
          </span>
        );
      })}
      <button type="button" className="button quiet" onClick={onDrop}>
        Drop second cursor
      </button>
    </p>
  );
}

interface SwitchWords {
  readonly channelId: string;
  readonly words: string;
}

function useSwitches(props: DifferenceLineProps): readonly SwitchWords[] {
  const { capture, source, channelIds, cursorS, secondCursorS } = props;
  const [counted, setCounted] = useState<readonly SwitchWords[]>([]);
  const ids = channelIds.filter((id) => switches(capture, id)).join('\n');
  useEffect(() => {
    let over = false;
    const count = async () => {
      const found: SwitchWords[] = [];
      for (const channelId of ids === '' ? [] : ids.split('\n')) {
        const between = await countSwitches(source, channelId, cursorS, secondCursorS, () => over);
        if (between === null) return;
        const words = countWords(between.count, 'switch', 'switches');
        found.push({ channelId, words: between.complete ? words : `more than ${words}` });
      }
      setCounted(found);
    };
    const timer = window.setTimeout(() => void count(), REST_MS);
    return () => {
      over = true;
      window.clearTimeout(timer);
    };
  }, [source, ids, cursorS, secondCursorS]);
  return counted;
}

function switches(capture: CaptureOutline, channelId: string): boolean {
  const role = capture.channels.find(({ id }) => id === channelId)?.role;
  return role === 'upstreamO2' || role === 'downstreamO2';
}
