import type { MonitorName, MonitorStatus } from '../capture/reported.ts';
import { listed } from '../words/numbers.ts';
import type { Condition, ConditionResult } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

/** Monitors that would have found what misleads here: until they have run, such a fault may be there unseen. */
const HIDING: Readonly<Partial<Record<MonitorName, string>>> = {
  misfire: 'misfire',
  fuelSystem: 'fuel system',
  o2Sensor: 'oxygen sensors',
  o2SensorHeater: 'oxygen sensor heaters',
};

export const readinessKnown: Condition = {
  id: 'readinessKnown',
  words: 'No open readiness question',
  help: 'Whether the monitors have finished since codes were last cleared. Read it before clearing anything: a car whose codes were cleared yesterday hides what it had. Without codes and readiness the finding rests on the traces alone.',
  blocker: 'readinessOpen',
  kinds: 'all',
  judge({ capture, troubleCodes }) {
    const monitors = capture.reported?.monitors ?? null;
    if (monitors) return byMonitors(this.id, monitors);
    return troubleCodes.length > 0
      ? met(this.id, 'Codes are stored, so they have not just been cleared.')
      : notRecorded(this.id, 'Readiness was not recorded with the vehicle.');
  },
};

/** From the capture's own log (SAE J1979 data item 01). An unfinished converter monitor is what people come with. */
function byMonitors(id: string, { incomplete }: MonitorStatus): ConditionResult {
  const hiding = incomplete.flatMap((name) => HIDING[name] ?? []);
  if (hiding.length > 0)
    return notMet(id, `Not finished since codes were cleared: ${listed(hiding)}. A fault there may not show yet.`);
  const others = incomplete.length;
  if (others === 0) return met(id, 'All monitors have finished since codes were last cleared.');
  const open = others === 1 ? 'one other has' : `${others} others have`;
  return met(id, `Monitors of misfire, fuel system and oxygen sensors have finished; ${open} not.`);
}
