import { Check, Minus, X } from 'lucide-react';
import type { Finding } from '../../core/findings/finding.ts';

/** The three answers of a condition: a tick, a cross, a dash. The words stand beside it. */
export function ConditionSign({ met }: { readonly met: boolean | null }) {
  const Icon = met === null ? Minus : met ? Check : X;
  const name = met === null ? 'notRecorded' : met ? 'met' : 'notMet';
  return <Icon className={`conditionSign ${name}`} size={18} strokeWidth={2.2} aria-hidden="true" />;
}

/**
 * A vessel that is full, half full or empty, or whose level is not known: the finding as a sign that needs no hue.
 */
export function FindingSign({ finding, size = 18 }: { readonly finding: Finding; readonly size?: number }) {
  return (
    <svg className={`findingSign ${finding}`} width={size} height={size} viewBox="0 0 18 18" aria-hidden="true">
      <path className="findingVessel" d="M3 2.5 V13 a3 3 0 0 0 3 3 h6 a3 3 0 0 0 3 -3 V2.5" />
      {finding === 'storing' && (
        <path className="findingLevel" d="M5 5 h8 v7.5 a1.5 1.5 0 0 1 -1.5 1.5 h-5 A1.5 1.5 0 0 1 5 12.5 Z" />
      )}
      {finding === 'weak' && (
        <path className="findingLevel" d="M5 10.5 h8 v2 a1.5 1.5 0 0 1 -1.5 1.5 h-5 A1.5 1.5 0 0 1 5 12.5 Z" />
      )}
      {finding === 'cannotTell' && (
        <path className="findingUnknown" d="M7 7.2 a2 2 0 1 1 2.8 1.8 c-.6.3 -.8.6 -.8 1.2 M9 12.6 v.2" />
      )}
    </svg>
  );
}
