// Signing opinions and withdrawing them. Both add to the record; nothing signed is ever changed.

import { nextLink } from '../../core/opinions/chain.ts';
import { restingWindow } from '../../core/opinions/restingWindow.ts';
import { readingNow } from '../../core/record/blindReading.ts';
import type { Opinion, RestingWindow, Signed } from '../../core/record/opinionSchema.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import { CORE_VERSION } from '../../core/version.ts';
import type { Program } from '../program/program.ts';
import { wholeRecordOf } from '../state/recordStore.ts';
import { changeSettings } from './changeSettings.ts';
import { sha256Of } from './sha256.ts';

/** What a reader says, before it is signed. */
export interface OpinionDraft
  extends Pick<Opinion, 'author' | 'finding' | 'confidence' | 'reasons' | 'nextTest' | 'answers' | 'disagreement'> {
  /** Windows of the record that it rests on. */
  readonly windowIds: readonly string[];
}

/** Signs an opinion and saves it at once. Returns its id. */
export async function signOpinion(program: Program, draft: OpinionDraft): Promise<string> {
  const { windowIds, answers, disagreement, ...said } = draft;
  const id = await signNext(program, (link, given) => ({
    ...link,
    ...said,
    ...readingNow(given),
    kind: 'opinion',
    author: tidyAuthor(said.author),
    reasons: whole(said.reasons),
    nextTest: whole(said.nextTest),
    answers,
    disagreement: answers === null ? null : disagreement,
    windows: restOn(program, windowIds),
  }));
  program.notices.getState().say('The opinion was signed. Undo goes no further back than this.');
  return id;
}

/** Withdraws an opinion by a further entry; it stays to be read. */
export async function withdrawOpinion(
  program: Program,
  { withdraws, author, reason }: { withdraws: string; author: Opinion['author']; reason: string },
): Promise<void> {
  await signNext(program, (link) => ({
    ...link,
    kind: 'withdrawal',
    author: tidyAuthor(author),
    withdraws,
    reason: whole(reason),
  }));
  program.notices.getState().say('The opinion was withdrawn. It stays to be read, marked as withdrawn.');
}

type Link = Pick<Signed, 'id' | 'signedAt' | 'coreVersion' | 'given' | 'previous'>;

async function signNext(program: Program, make: (link: Link, given: VehicleRecord) => Signed): Promise<string> {
  const { record, clock, saver } = program;
  const id = program.newId();
  record.getState().endGesture();
  for (;;) {
    const given = wholeRecordOf(record.getState());
    if (given === null) throw new Error('there is no vehicle to sign an opinion on');
    const hashes = await nextLink(given, sha256Of);
    // A finding may have been kept while the hash was made: what is signed is the record as it stands.
    if (wholeRecordOf(record.getState()) !== given) continue;
    const entry = make({ id, signedAt: clock.instant(), coreVersion: CORE_VERSION, ...hashes }, given);
    record.getState().sign(entry);
    await changeSettings(program, { reader: entry.author.name, licence: entry.author.licence });
    await saver.flush();
    return id;
  }
}

function restOn({ record, wholeScore }: Program, windowIds: readonly string[]): RestingWindow[] {
  const vehicle = wholeRecordOf(record.getState());
  if (vehicle === null) return [];
  return Object.values(vehicle.windows)
    .filter(({ id }) => windowIds.includes(id))
    .flatMap((window) => restingWindow(window, vehicle, wholeScore.getState().score, CORE_VERSION) ?? []);
}

const tidyAuthor = ({ name, licence }: Opinion['author']) => ({
  name: whole(name.trim()).slice(0, 200),
  licence: whole(licence.trim()).slice(0, 200),
});

/** Half a character, which a cut in a field may leave, has no canonical form. */
function whole(text: string): string {
  return text.replace(/\p{Cs}/gu, '\uFFFD');
}
