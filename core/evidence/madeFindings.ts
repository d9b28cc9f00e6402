import type { VehicleScore } from '../findings/vehicleScore.ts';
import type { KeptFinding } from '../record/schema.ts';
import { sureBriefly } from './words/sure.ts';
import { FINDING_WORDS } from './words/terms.ts';

/** A finding as it would be kept, without who made it and when. */
export type MadeFinding = Omit<KeptFinding, 'coreVersion' | 'madeAt'>;

/**
 * What a record keeps of a score: the vehicle's finding, after the repair where there was one, and one of each window.
 * Of a window that speaks of both banks it is that of the second one.
 */
export function madeFindings(score: VehicleScore): MadeFinding[] {
  const { verdict } = score.after ?? score.before;
  const whole: MadeFinding = {
    id: 'vehicle',
    windowId: null,
    finding: verdict.finding,
    probabilityNotStoring: verdict.probabilityNotStoring,
    sentence: score.sentence,
  };
  const ofWindows = score.windows.map(({ windowId, score: { finding, probabilityNotStoring } }): MadeFinding => {
    const sure = sureBriefly(finding, probabilityNotStoring, '.');
    return {
      id: `window-${windowId}`,
      windowId,
      finding,
      probabilityNotStoring,
      sentence: `${FINDING_WORDS[finding]}${sure === null ? '' : `, ${sure}`}.`,
    };
  });
  return [...new Map([whole, ...ofWindows].map((made) => [made.id, made])).values()];
}
