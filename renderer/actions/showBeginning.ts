import type { Picked } from '../../core/bridge/shellMessages.ts';
import type { Program } from '../program/program.ts';
import { traceSource } from '../worker/traceSource.ts';

/** Smaller files are read before anybody could look. */
const LONG_BYTES = 8_000_000;

/**
 * Shows the first rows of a long file while the whole is read. Call what it returns when the reading is over, once or
 * more: the rows are let go then. A file whose beginning says nothing by itself shows nothing.
 */
export function showBeginning({ core, captures }: Program, picked: Picked): () => void {
  if (picked.bytes < LONG_BYTES) return () => undefined;
  const controller = new AbortController();
  let key: string | null = null;
  void core
    .ask('openBeginning', { token: picked.token, choice: null }, { signal: controller.signal })
    .then((outcome) => {
      if (!outcome.ok) return;
      ({ key } = outcome.value);
      captures.getState().begin({ outline: outcome.value, source: traceSource(core, key) });
    });
  return () => {
    controller.abort(); // an answer that is still on its way is let go by the core
    if (key === null) return;
    captures.getState().endBeginning(key);
    void core.ask('close', { key });
    key = null;
  };
}
