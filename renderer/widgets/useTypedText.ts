import { useEffect, useRef, useState } from 'react';
import { useProgram } from '../program/programContext.ts';

/** A pause in typing after which the words are kept. Under a second, so that at most a second of typing can be lost. */
export const TYPING_PAUSE_MS = 600;

/**
 * Text that is being typed: the field shows what was typed, the record gets it after each pause and when the field is
 * left. One pause is one step of undo.
 */
export function useTypedText(value: string, keep: (text: string) => void) {
  const { clock } = useProgram();
  const [typed, setTyped] = useState<string | null>(null);
  const latest = useRef({ typed, keep, value });
  latest.current = { typed, keep, value };

  const settle = (): void => {
    const now = latest.current;
    if (now.typed !== null && now.typed !== now.value) now.keep(now.typed);
  };
  const settleNow = useRef(settle);
  settleNow.current = settle;

  useEffect(
    () => (typed === null ? undefined : clock.after(TYPING_PAUSE_MS, () => settleNow.current())),
    [typed, clock],
  );
  useEffect(() => () => settleNow.current(), []);

  return {
    text: typed ?? value,
    type: (text: string) => setTyped(text),
    leave: () => {
      settle();
      setTyped(null);
    },
  };
}
