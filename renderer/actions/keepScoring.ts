// The vehicle is scored whenever something that counts has changed: one question at a time, always the latest.

import type { VehicleQuestion } from '../../core/bridge/coreMessages.ts';
import type { Problem } from '../../core/reading/problem.ts';
import { evidenceOf } from '../../core/record/evidenceOf.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import type { Program } from '../program/program.ts';
import type { HeldCapture } from '../state/captureStore.ts';
import { wholeRecordOf } from '../state/recordStore.ts';
import { keepFindings } from './keepFindings.ts';

/** Begins to watch. The returned function stops it. */
export function keepScoring(program: Program): () => void {
  const { record, captures, wholeScore, core, notices } = program;
  let asked = '';
  let running = false;

  const scoreAll = async (): Promise<void> => {
    if (running) return;
    running = true;
    for (let next = nextQuestion(program, asked); next !== null; next = nextQuestion(program, asked)) {
      asked = next.key;
      const whole = isWhole(program); // as asked: a capture that is opened meanwhile is not in the answer
      wholeScore.setState({ pending: true });
      const outcome = await core.ask('scoreVehicle', next.question);
      if (wholeRecordOf(record.getState())?.id !== next.vehicleId) continue;
      if (outcome.ok) {
        wholeScore.setState({ score: outcome.value, problem: null });
        notices.getState().clear('score');
        if (whole) keepFindings(program, outcome.value);
      } else {
        wholeScore.setState({ problem: outcome.problem });
        // What was found before stays on the page, and must not pass for what is true now.
        if (nextQuestion(program, asked) === null) tellScoring(program, outcome.problem);
      }
    }
    running = false;
    wholeScore.setState({ pending: false });
  };

  const stops = [record.subscribe(() => void scoreAll()), captures.subscribe(() => void scoreAll())];
  return () => stops.forEach((stop) => void stop());
}

/** Says why there is no finding. A core that was lost is started again, and asked again, by itself. */
export function tellScoring({ notices }: Program, problem: Problem): void {
  if (problem.id !== 'coreLost') notices.getState().tell('score', problem);
}

/** Findings made while a capture is not open say less than those that are kept, and do not take their place. */
function isWhole({ record, captures }: Program): boolean {
  const { held } = captures.getState();
  return Object.keys(wholeRecordOf(record.getState())?.captures ?? {}).every((id) => held[id] !== undefined);
}

function nextQuestion(program: Program, asked: string) {
  const vehicle = wholeRecordOf(program.record.getState());
  if (vehicle === null) return null;
  const question = vehicleQuestion(vehicle, program.captures.getState().held);
  const key = `${vehicle.id} ${JSON.stringify(question)}`;
  return key === asked ? null : { key, question, vehicleId: vehicle.id };
}

/** What the core has to know of a vehicle to judge it: the captures it holds, with their windows, readings and codes. */
export function vehicleQuestion(vehicle: VehicleRecord, held: Readonly<Record<string, HeldCapture>>): VehicleQuestion {
  return evidenceOf(vehicle, (id) => {
    const key = held[id]?.summary.key;
    return key === undefined ? null : { key };
  });
}
