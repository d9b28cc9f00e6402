// The findings that came in a bundle beside those that are worked out from its captures here (T-EV-3).

import type { ReportedBundle } from '../../core/contract/commandReport.ts';
import { type MadeFinding, madeFindings } from '../../core/evidence/madeFindings.ts';
import { judgeVehicle } from '../../core/findings/judgeVehicle.ts';
import { evidenceOf } from '../../core/record/evidenceOf.ts';
import { windowsInOrder } from '../../core/record/inOrder.ts';
import type { KeptFinding, VehicleRecord } from '../../core/record/schema.ts';
import type { BundledCapture, ReadBundle } from './readBundled.ts';

/** What is told of a bundle beside each of its captures. `name` is the bundle's file name without folders. */
export function compareFindings(
  name: string,
  { bundle, record, captures }: ReadBundle,
): (captureId: string) => ReportedBundle {
  const read = captures.flatMap((one) => (one.ok ? [one.value] : []));
  const made = new Map(recomputed(record, read).map((one) => [one.id, one]));
  const whole = read.length === Object.keys(record.captures).length;
  const { manifest, manifestSha256 } = bundle;
  return (captureId) => ({
    file: name,
    manifestSha256,
    madeAt: manifest.madeAt,
    coreVersion: manifest.coreVersion,
    windows: windowsInOrder(record)
      .filter((window) => window.captureId === captureId)
      .map(({ id, name: called, startS, endS }) => {
        const kept = Object.values(record.findings).find(({ windowId }) => windowId === id);
        return { id, name: called, startS, endS, ...compared(kept, made.get(`window-${id}`)) };
      }),
    vehicle: {
      name: record.identity.name,
      ...compared(
        Object.values(record.findings).find(({ windowId }) => windowId === null),
        whole ? made.get('vehicle') : undefined,
      ),
    },
  });
}

function recomputed(record: VehicleRecord, read: readonly BundledCapture[]): MadeFinding[] {
  const byId = new Map(read.map(({ captureId, read: { capture } }) => [captureId, capture]));
  const evidence = evidenceOf(record, (id) => {
    const capture = byId.get(id);
    return capture === undefined ? null : { capture };
  });
  return madeFindings(judgeVehicle(evidence));
}

function compared(kept: KeptFinding | undefined, made: MadeFinding | undefined) {
  const same = kept?.finding === made?.finding && Object.is(kept?.probabilityNotStoring, made?.probabilityNotStoring);
  return {
    kept:
      kept === undefined
        ? null
        : {
            finding: kept.finding,
            probabilityNotStoring: kept.probabilityNotStoring,
            coreVersion: kept.coreVersion,
            madeAt: kept.madeAt,
          },
    recomputed:
      made === undefined ? null : { finding: made.finding, probabilityNotStoring: made.probabilityNotStoring },
    agree: kept === undefined || made === undefined ? null : same,
  };
}
