// The thread of threadSlowAnswers.ts: judges captures that the process holds, in the same memory.

import { parentPort } from 'node:worker_threads';
import { slowAnswersHere } from '../../core/service/slowAnswers.ts';
import { SLOW_CORE } from '../../core/service/slowCore.ts';
import { faultWords } from './faultWords.ts';
import type { FromSlowThread, ToSlowThread } from './slowMessages.ts';

const answers = slowAnswersHere(SLOW_CORE, (fault) => process.stderr.write(faultWords(fault)));

parentPort?.on('message', (message: ToSlowThread) => {
  if (message.type === 'hold') answers.hold(message.key, message.capture);
  else if (message.type === 'release') answers.release(message.key);
  else void answer(message);
});

async function answer({ id, name, ask }: Extract<ToSlowThread, { type: 'ask' }>): Promise<void> {
  const said: FromSlowThread = { id, outcome: await answers.answer(name, ask) };
  parentPort?.postMessage(said);
}
