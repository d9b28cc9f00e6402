import type { CaptureSummary, ChannelSummary, CoreQuestions } from '../../bridge/coreMessages.ts';
import type { Channel } from '../../capture/channel.ts';
import { sampleCount } from '../../capture/timeBase.ts';
import type { Outcome } from '../../reading/problem.ts';
import type { ByteSource } from '../../reading/readCapture.ts';
import { type CoreHost, type HeldBytes, SourceFault } from '../coreHost.ts';
import type { HeldCapture } from '../heldCaptures.ts';
import { answered, cancelled } from '../serviceProblems.ts';
import type { Answer, AnswerTools } from './answer.ts';

/** Reading gives way to other questions at least this often. */
const TURN_MS = 20;

/** Reads a capture and holds it. Other captures stay usable meanwhile; nothing is held of one that was not read whole. */
export const open: Answer<'open'> = async (ask, tools) => {
  const opened = await tools.host.openBytes(ask.token);
  if (!opened.ok) return opened;
  const bytes = opened.value;
  try {
    return await readHeld(bytes, ask, tools);
  } catch (fault) {
    if (fault instanceof SourceFault) return { ok: false, problem: fault.problem };
    throw fault;
  } finally {
    await bytes.close();
  }
};

async function readHeld(
  bytes: HeldBytes,
  { token: _token, ...options }: CoreQuestions['open']['ask'],
  { askId, core, host, held, onProgress, isCancelled }: AnswerTools,
): Promise<Outcome<CoreQuestions['open']['reply']>> {
  const memoryBytes = await host.captureMemory();
  const wishes = { ...options, memoryBytes, onProgress, isCancelled };
  const read = await core.readCapture(givingWay(bytes.source, host), wishes);
  if (isCancelled()) return cancelled(bytes.source.name);
  if (!read.ok) return read;
  const finished = await bytes.finish();
  if (!finished.ok) return finished;
  if (isCancelled()) return cancelled(bytes.source.name);
  const summary = summaryOf(held.hold(read.value.capture, finished.value.sha256, askId));
  return answered({ summary, question: read.value.question });
}

/** The same bytes, with a pause for other questions between chunks. */
function givingWay(source: ByteSource, host: CoreHost): ByteSource {
  return {
    ...source,
    async *chunks() {
      let turnBegan = host.nowMs();
      for await (const chunk of source.chunks()) {
        yield chunk;
        if (host.nowMs() - turnBegan < TURN_MS) continue;
        await host.pause();
        turnBegan = host.nowMs();
      }
    },
  };
}

function summaryOf({ key, sha256, capture }: HeldCapture): CaptureSummary {
  return { ...capture, key, sha256, channels: capture.channels.map(withoutSamples) };
}

function withoutSamples({ values: _values, time, ...rest }: Channel): ChannelSummary {
  return { ...rest, samples: sampleCount(time) };
}
