import { useEffect, useRef, useState } from 'react';
import { useProgram } from '../program/programContext.ts';

/** What is being typed is kept this often, so that with the save behind it less than a second can be lost. */
export const KEEP_EVERY_MS = 500;
/** A pause after which the next words are a step of undo of their own. */
export const STEP_AFTER_MS = 1500;

/**
 * Text that is being typed: the field shows what was typed, the record gets it while it is typed and when the field is
 * left. What is typed without a long pause is one step of undo, where its edits carry a merge key.
 */
export function useTypedText(value: string, keep: (text: string) => void) {
  const { clock, record } = useProgram();
  const [typed, setTyped] = useState<string | null>(null);
  const latest = useRef({ typed, keep, value });
  latest.current = { typed, keep, value };
  const waiting = useRef<(() => void) | null>(null);

  const keepNow = useRef((): void => {
    waiting.current?.();
    waiting.current = null;
    const { typed: text, keep: put, value: kept } = latest.current;
    if (text !== null && text !== kept) put(text);
  });

  // Each pause seals the step.
  useEffect(
    () => (typed === null ? undefined : clock.after(STEP_AFTER_MS, () => record.getState().seal())),
    [typed, clock, record],
  );
  useEffect(
    () => () => {
      keepNow.current();
      record.getState().seal();
    },
    [record],
  );

  return {
    text: typed ?? value,
    type: (text: string): void => {
      setTyped(text);
      latest.current = { ...latest.current, typed: text };
      waiting.current ??= clock.after(KEEP_EVERY_MS, () => keepNow.current());
    },
    leave: (): void => {
      keepNow.current();
      setTyped(null);
      record.getState().seal();
    },
  };
}
