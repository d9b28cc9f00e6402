import type { CoreQuestions } from '../../bridge/coreMessages.ts';
import type { Outcome } from '../../reading/problem.ts';
import type { HeldBytes } from '../coreHost.ts';
import { givingWay } from '../givingWay.ts';
import { outlineOf } from '../outlineOf.ts';
import { answered, cancelled } from '../serviceProblems.ts';
import { whileOpen } from '../whileOpen.ts';
import type { Answer, AnswerTools } from './answer.ts';

/** Reads a capture and holds it. Other captures stay usable meanwhile; nothing is held of one that was not read whole. */
export const open: Answer<'open'> = (ask, tools) =>
  whileOpen(ask.token, 'whole', tools.host, (bytes) => readHeld(bytes, ask, tools));

async function readHeld(
  bytes: HeldBytes,
  { token: _token, ...options }: CoreQuestions['open']['ask'],
  { askId, core, host, held, onProgress, isCancelled }: AnswerTools,
): Promise<Outcome<CoreQuestions['open']['reply']>> {
  const memoryBytes = await host.captureMemory();
  const wishes = { ...options, memoryBytes, onProgress, isCancelled, pause: () => host.pause() };
  const read = await core.readCapture(givingWay(bytes.source, host), wishes);
  if (isCancelled()) return cancelled(bytes.source.name);
  if (!read.ok) return read;
  const finished = await bytes.finish();
  if (!finished.ok) return finished;
  if (isCancelled()) return cancelled(bytes.source.name);
  const { sha256 } = finished.value;
  const summary = { ...outlineOf(held.hold(read.value.capture, askId)), sha256 };
  return answered({ summary, question: read.value.question });
}
