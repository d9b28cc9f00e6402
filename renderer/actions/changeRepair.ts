import { type RepairId, repairOf } from '../../core/capture/repairs.ts';
import { withAsWritten } from '../../core/record/asWritten.ts';
import { setRepairs } from '../../core/record/edits/captures.ts';
import { sameValue } from '../../core/record/sameValue.ts';
import type { Program } from '../program/program.ts';
import { recordOf } from '../state/recordStore.ts';
import { shownCapture } from '../state/selectors/shown.ts';
import { readAgain } from './readAgain.ts';

/** One change is made after the other, each from what the one before has left. */
const turns = new WeakMap<Program, Promise<void>>();

/** Undoes a repair of a capture's times, or makes it again with `make`, and reads the file anew. One step of the history. */
export function changeRepair(program: Program, captureId: string, repair: RepairId, make: boolean): Promise<void> {
  const change = () => changeNow(program, captureId, repair, make);
  const turn = (turns.get(program) ?? Promise.resolve()).then(change, change);
  turns.set(program, turn);
  return turn;
}

async function changeNow(program: Program, captureId: string, repair: RepairId, make: boolean): Promise<void> {
  const { captures, record, notices } = program;
  const held = captures.getState().held[captureId];
  const capture = recordOf(record.getState())?.captures[captureId];
  if (held === undefined || capture === undefined || record.getState().readOnly) return;
  const { name, columnChoice } = capture;
  const others = (columnChoice?.asWritten ?? []).filter((id) => id !== repair);
  const choice = withAsWritten(columnChoice, held.summary.layout.headerKey, make ? others : [...others, repair]);
  if (sameValue(choice, columnChoice)) return;
  const outcome = await readAgain(program, captureId, choice, setRepairs);
  if (!outcome.ok) {
    if (outcome.problem.id === 'cancelled') notices.getState().say(`Reading ${name} again was cancelled.`);
    else notices.getState().tell('locate', outcome.problem);
  } else if (outcome.value) {
    const { problems, dismiss } = notices.getState();
    for (const { key, place, problem } of problems) if (place === 'locate' && problem.where === name) dismiss(key);
    const what = make ? 'The repair was made again' : 'The repair was undone';
    const words = `${what} in ${name}. Windows and notes keep their seconds and may now lie over other rows.`;
    notices.getState().say(words);
  }
}

/** How many repairs of its times were made or undone in the shown capture. */
export function repairsIn(program: Program): number {
  return shownCapture(program)?.summary.warnings.filter((warning) => repairOf(warning) !== null).length ?? 0;
}
