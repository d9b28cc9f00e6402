import type { VehicleScore } from '../findings/vehicleScore.ts';
import type { CoreSaid, RestingWindow } from '../record/opinionSchema.ts';
import type { RecordWindow, VehicleRecord } from '../record/schema.ts';

/**
 * A window of the record as an opinion keeps it, with what the core said of it: from the score where its capture is open,
 * else from the finding that the record kept. Null for a window whose capture the record does not have.
 */
export function restingWindow(
  window: RecordWindow,
  record: VehicleRecord,
  score: VehicleScore | null,
  coreVersion: string,
): RestingWindow | null {
  const capture = Object.hasOwn(record.captures, window.captureId) ? record.captures[window.captureId] : undefined;
  if (capture === undefined) return null;
  const { startS, endS, bank, kind } = window;
  const scored = (score?.windows ?? []).filter(({ windowId }) => windowId === window.id);
  const coreSaid: CoreSaid[] = scored.map(({ score: said }) => ({
    bank: said.bank,
    coreVersion,
    finding: said.finding,
    probabilityNotStoring: said.probabilityNotStoring,
    conditions: Object.fromEntries(said.conditions.map(({ id, met }) => [id, met])),
    measures: Object.fromEntries(said.measures.map(({ id, value }) => [id, value])),
  }));
  return {
    captureSha256: capture.sha256,
    startS,
    endS,
    bank,
    kind,
    coreSaid: coreSaid.length > 0 ? coreSaid : keptSaid(window, record),
  };
}

function keptSaid({ id, bank }: RecordWindow, { findings }: VehicleRecord): CoreSaid[] {
  return Object.values(findings)
    .filter(({ windowId }) => windowId === id)
    .slice(0, 2)
    .map(({ coreVersion, finding, probabilityNotStoring }) => ({
      bank,
      coreVersion,
      finding,
      probabilityNotStoring,
      conditions: {},
      measures: {},
    }));
}
