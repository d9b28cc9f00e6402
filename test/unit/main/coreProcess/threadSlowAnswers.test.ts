import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { slowAnswersHere } from '../../../../core/service/slowAnswers.ts';
import { SLOW_CORE } from '../../../../core/service/slowCore.ts';
import { suggestWindows } from '../../../../core/windows/suggestWindows.ts';
import { threadSlowAnswers } from '../../../../main/coreProcess/threadSlowAnswers.ts';
import { buildThread } from '../../../support/buildThread.ts';
import { sampleCapture } from '../../../support/sampleCapture.ts';

let folder = '';
let script = '';
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'tailtrace-slow-'));
  script = await buildThread('main/coreProcess/slowThread.ts', folder);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('slow questions in a thread', () => {
  it('get the answers that they get without one, to the last bit', async () => {
    const capture = await sampleCapture('van-before.csv');
    const here = slowAnswersHere(SLOW_CORE, (fault) => expect.fail(String(fault)));
    const there = threadSlowAnswers(script);
    for (const answers of [here, there]) answers.hold('capture-1', capture);
    const [window] = suggestWindows(capture);
    if (window === undefined) throw new Error('This drive has no window.');
    const ask = { key: 'capture-1', window, troubleCodes: ['P0420'] };
    const one = await here.answer('scoreWindow', ask);
    const two = await there.answer('scoreWindow', ask);
    there.end();
    expect(one).toMatchObject({ ok: true });
    expect(two).toEqual(one);
  });

  it('are told that a capture is not open after it was let go', async () => {
    const capture = await sampleCapture('van-before.csv');
    const answers = threadSlowAnswers(script);
    answers.hold('capture-1', capture);
    answers.release('capture-1');
    const outcome = await answers.answer('suggest', { key: 'capture-1' });
    answers.end();
    expect(outcome).toMatchObject({ ok: false, problem: { id: 'notOpen' } });
  });

  it('do not copy the columns: what is written here is seen there', async () => {
    const capture = await sampleCapture('van-before.csv');
    const answers = threadSlowAnswers(script);
    answers.hold('capture-1', capture);
    for (const { values } of capture.channels) values.fill(Number.NaN);
    const said = await answers.answer('describe', { key: 'capture-1', channelIds: ['c1'], startS: 0, endS: 60 });
    answers.end();
    expect(said).toMatchObject({ value: [expect.stringContaining('no values were recorded')] });
  });
});
