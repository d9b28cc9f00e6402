import { describe, expect, it } from 'vitest';
import { checkOpinions } from '../../../../core/opinions/chain.ts';
import { vehicleRecordSchema } from '../../../../core/record/schema.ts';
import { openPicked } from '../../../../renderer/actions/openCaptures.ts';
import { type OpinionDraft, signOpinion, withdrawOpinion } from '../../../../renderer/actions/opinions.ts';
import { acceptAllOffers, offersOfShown } from '../../../../renderer/actions/windows.ts';
import { DEEDS } from '../../../../renderer/commands/index.ts';
import { recordOf } from '../../../../renderer/state/recordStore.ts';
import { emptyDraft, whatIsMissing } from '../../../../renderer/state/signDraft.ts';
import { nodeSha256 } from '../../../support/signedChain.ts';
import { emptyMemory, startWindow } from '../../../support/windowProgram.ts';

const DRAFT: OpinionDraft = {
  author: { name: ' First reader ', licence: 'L-1, invented' },
  finding: 'notStoring',
  confidence: 85,
  reasons: 'The rear sensor follows the front one.',
  nextTest: 'Smoke the exhaust.',
  answers: null,
  disagreement: 'onThreshold',
  windowIds: [],
};

async function withWindows() {
  const memory = emptyMemory();
  const window = await startWindow(memory);
  await openPicked(window.program, [window.sample('van-before')]);
  await window.quiet();
  expect(offersOfShown(window.program).length).toBeGreaterThan(1);
  acceptAllOffers(window.program);
  await window.quiet();
  const record = () => {
    const now = recordOf(window.program.record.getState());
    if (now === null) throw new Error('no vehicle is open');
    return now;
  };
  const opinion = (id: string) => {
    const entry = record().opinions[id];
    if (entry?.kind !== 'opinion') throw new Error(`${id} is no opinion`);
    return entry;
  };
  return { ...window, memory, record, opinion };
}

describe('signing an opinion', () => {
  it('keeps what was said, on which windows, and what the core said of them', async () => {
    const { program, record, opinion } = await withWindows();
    const [first] = Object.values(record().windows);
    const id = await signOpinion(program, { ...DRAFT, windowIds: [first?.id ?? ''] });
    const { windows, ...said } = opinion(id);
    expect(said).toMatchObject({
      author: { name: 'First reader', licence: 'L-1, invented' },
      finding: 'notStoring',
      confidence: 85,
      disagreement: null, // it answers nobody, so it disagrees with nobody
      previous: null,
    });
    expect(windows).toHaveLength(1);
    expect(windows[0]).toMatchObject({ startS: first?.startS, endS: first?.endS, kind: first?.kind });
    expect(windows[0]?.captureSha256).toBe(Object.values(record().captures)[0]?.sha256);
    const score = program.score.getState().score?.windows.find(({ windowId }) => windowId === first?.id)?.score;
    expect(windows[0]?.coreSaid[0]).toMatchObject({
      finding: score?.finding,
      probabilityNotStoring: score?.probabilityNotStoring,
    });
    expect(Object.keys(windows[0]?.coreSaid[0]?.conditions ?? {})).toEqual(score?.conditions.map((one) => one.id));
    expect(Object.keys(windows[0]?.coreSaid[0]?.measures ?? {})).toEqual(score?.measures.map((one) => one.id));
    expect(vehicleRecordSchema.safeParse(record()).error).toBeUndefined();
  });

  it('remembers who signed, saves at once, and is found whole after a restart', async () => {
    const { program, memory, record } = await withWindows();
    await signOpinion(program, DRAFT);
    await signOpinion(program, { ...DRAFT, finding: 'cannotTell' });
    expect(program.record.getState().save).toBe('saved');
    expect(program.settings.getState().settings).toMatchObject({ reader: 'First reader', licence: 'L-1, invented' });
    const again = await startWindow(memory);
    const kept = recordOf(again.program.record.getState());
    expect(kept?.opinions).toEqual(record().opinions);
    const links = kept === null ? [] : await checkOpinions(kept, nodeSha256);
    expect(links.map(({ state }) => state)).toEqual(['whole', 'whole']);
    expect(links.at(-1)?.sameRecord).toBe(true);
  });

  it('closes the history, and says so where undo is', async () => {
    const { program, record } = await withWindows();
    const undo = () => DEEDS.get('edit.undo')?.state(program);
    expect(undo()?.enabled).toBe(true);
    await signOpinion(program, DRAFT);
    const signed = record();
    expect(undo()).toMatchObject({ enabled: false, reason: 'An opinion was signed: undo goes no further back.' });
    program.record.getState().undo();
    expect(record()).toBe(signed);
  });

  it('half a character that a field cut off does not stop it', async () => {
    const { program, opinion } = await withWindows();
    const id = await signOpinion(program, { ...DRAFT, reasons: 'follows \ud83d' });
    expect(opinion(id).reasons).toBe('follows \ufffd');
  });
});

describe('withdrawing an opinion', () => {
  it('adds to the chain and leaves the opinion as it was signed', async () => {
    const { program, record, opinion } = await withWindows();
    const id = await signOpinion(program, DRAFT);
    const before = opinion(id);
    await withdrawOpinion(program, { withdraws: id, author: { name: 'A', licence: '' }, reason: 'A leak was found.' });
    expect(opinion(id)).toBe(before);
    const links = await checkOpinions(record(), nodeSha256);
    expect(links.map(({ entry, state }) => [entry.kind, state])).toEqual([
      ['opinion', 'whole'],
      ['withdrawal', 'whole'],
    ]);
  });
});

describe('what is missing before it can be signed', () => {
  it('is said one after another, and nothing is suggested', () => {
    const empty = emptyDraft('v', null);
    expect([empty.finding, empty.confidence]).toEqual([null, null]);
    expect(whatIsMissing(empty, 'A')).toBe('Choose your finding.');
    expect(whatIsMissing({ ...empty, finding: 'weak' }, 'A')).toMatch(/^Type how sure/);
    expect(whatIsMissing({ ...empty, finding: 'weak', confidence: 60 }, ' ')).toMatch(/^Type your name/);
    expect(whatIsMissing({ ...empty, finding: 'weak', confidence: 60 }, 'A')).toBeNull();
  });
});
