import type { CaptureSummary } from '../../core/bridge/coreMessages.ts';
import type { Bank, Role } from '../../core/capture/roles.ts';
import type { WindowScore } from '../../core/findings/finding.ts';
import { tellsOf } from '../../core/findings/judgeStage.ts';
import type { Program } from '../program/program.ts';
import { recordOf } from '../state/recordStore.ts';
import { tellScoring } from './keepScoring.ts';

/** Scores the offer that is being looked at, so that its finding can be read before it is accepted. */
export function keepOfferScore(program: Program): () => void {
  const { workspace, captures, record, wholeScore, core } = program;
  let asked = '';

  const look = async (): Promise<void> => {
    const { selected } = workspace.getState();
    const found = selected?.kind === 'offer' ? heldOffer(program, selected.id) : null;
    const key = found === null ? '' : JSON.stringify([selected?.id, found]);
    if (key === asked) return;
    asked = key;
    if (found === null || selected === null) {
      if (wholeScore.getState().offer !== null) wholeScore.setState({ offer: null });
      return;
    }
    const { id } = selected;
    wholeScore.setState({ offer: { id, scores: null } });
    const scores: WindowScore[] = [];
    for (const question of found) {
      const outcome = await core.ask('scoreWindow', question);
      if (asked !== key) return;
      if (outcome.ok) scores.push(outcome.value);
      else tellScoring(program, outcome.problem);
    }
    wholeScore.setState({ offer: { id, scores } });
  };

  const stops = [workspace, captures, record].map((store) => store.subscribe(() => void look()));
  return () => stops.forEach((stop) => void stop());
}

/** The questions about an offer: one for each bank where it speaks of the whole engine. */
function heldOffer(program: Program, offer: string) {
  const [captureId = '', index = ''] = offer.split('/');
  const held = program.captures.getState().held[captureId];
  const window = held?.offers[Number(index)];
  if (held === undefined || window === undefined) return null;
  const record = recordOf(program.record.getState());
  const kind = record?.captures[captureId]?.kind;
  // Codes belong to the car as it was found, as in the vehicle's own score: accepting an offer changes nothing it says.
  const codes = kind !== undefined && tellsOf(kind, 'before') ? Object.values(record?.troubleCodes ?? {}) : [];
  const troubleCodes = codes.map(({ code }) => code);
  const banks = window.bank === null ? banksWithSensors(held.summary) : [window.bank];
  return banks.map((bank) => ({ key: held.summary.key, window: { ...window, bank }, troubleCodes }));
}

/** Banks with an oxygen sensor; the whole engine where none is told. */
function banksWithSensors({ channels }: CaptureSummary): readonly Bank[] {
  const sensors = channels.filter(({ role }) => SENSORS.has(role));
  const banks = ([1, 2] as const).filter((bank) => sensors.some((channel) => channel.bank === bank));
  return banks.length === 0 ? [null] : banks;
}

const SENSORS = new Set<Role>(['upstreamO2', 'upstreamLambda', 'downstreamO2']);
