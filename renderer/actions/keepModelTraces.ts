import type { Program } from '../program/program.ts';
import { judgedStretch } from '../state/selectors/judged.ts';
import { tellScoring } from './keepScoring.ts';

/** Lays the traces of the model over the rear sensor while they are switched on, for the stretch that is looked at. */
export function keepModelTraces(program: Program): () => void {
  const { workspace, captures, record, wholeScore, core, notices } = program;
  let asked = '';

  const look = async (): Promise<void> => {
    const judged = workspace.getState().ghosts ? judgedStretch(program) : null;
    const question = judged === null ? null : { key: judged.held.summary.key, window: judged.window };
    const key = JSON.stringify(question);
    if (key === asked) return;
    asked = key;
    if (wholeScore.getState().model.length > 0) wholeScore.setState({ model: [] });
    if (question === null) return;
    const outcome = await core.ask('modelTraces', question);
    if (asked !== key) return;
    if (!outcome.ok) {
      tellScoring(program, outcome.problem);
      return;
    }
    wholeScore.setState({ model: outcome.value });
    if (outcome.value.length === 0) {
      notices.getState().say('No model can be followed in this window: it needs both sensors and quicker values.');
    }
  };

  const stops = [workspace, captures, record].map((store) => store.subscribe(() => void look()));
  return () => stops.forEach((stop) => void stop());
}
