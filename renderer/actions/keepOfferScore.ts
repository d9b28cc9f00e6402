import type { Program } from '../program/program.ts';
import { recordOf } from '../state/recordStore.ts';

/** Scores the offer that is being looked at, so that its finding can be read before it is accepted. */
export function keepOfferScore(program: Program): () => void {
  const { workspace, captures, record, score, core } = program;
  let asked = '';

  const look = async (): Promise<void> => {
    const { selected } = workspace.getState();
    const found = selected?.kind === 'offer' ? heldOffer(program, selected.id) : null;
    const key = found === null ? '' : `${found.question.key} ${selected?.id} ${found.question.troubleCodes.join()}`;
    if (key === asked) return;
    asked = key;
    if (found === null || selected === null) {
      if (score.getState().offer !== null) score.setState({ offer: null });
      return;
    }
    score.setState({ offer: { id: selected.id, score: null } });
    const outcome = await core.ask('scoreWindow', found.question);
    if (asked !== key) return;
    score.setState(outcome.ok ? { offer: { id: selected.id, score: outcome.value } } : { problem: outcome.problem });
  };

  const stops = [workspace, captures, record].map((store) => store.subscribe(() => void look()));
  return () => stops.forEach((stop) => void stop());
}

function heldOffer(program: Program, offer: string) {
  const [captureId = '', index = ''] = offer.split('/');
  const held = program.captures.getState().held[captureId];
  const window = held?.offers[Number(index)];
  if (held === undefined || window === undefined) return null;
  const troubleCodes = Object.values(recordOf(program.record.getState())?.troubleCodes ?? {}).map(({ code }) => code);
  return { question: { key: held.summary.key, window, troubleCodes } };
}
