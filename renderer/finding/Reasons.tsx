import { weightsSentence } from '../../core/evidence/words/sure.ts';
import type { Finding, Reason } from '../../core/findings/finding.ts';
import { keptTogether, numberWords } from '../words/numbers.ts';

interface ReasonsProps {
  readonly reasons: readonly Reason[];
  readonly finding: Finding;
}

/** Weight at which a bar is full: beyond it one reason decides alone. */
const FULL_WEIGHT = 5;

const SIDES = [
  { for: 'notStoring', title: 'For: it does not store' },
  { for: 'weak', title: 'For: it stores weakly' },
  { for: 'storing', title: 'For: it stores' },
  { for: 'cannotTell', title: 'Against giving a finding' },
] as const;

/** Reasons for and against in order of weight. The side of the finding stands first. */
export function Reasons({ reasons, finding }: ReasonsProps) {
  if (reasons.length === 0) return null;
  const sides = [...SIDES].sort((a, b) => Number(b.for === finding) - Number(a.for === finding));
  return (
    <section className="reportPart">
      <h3>Why</h3>
      {sides.map((side) => {
        const ofSide = reasons.filter((reason) => reason.for === side.for);
        return ofSide.length === 0 ? null : <Side key={side.for} title={side.title} reasons={ofSide} />;
      })}
      <p className="soft">{weightsSentence('.')}</p>
    </section>
  );
}

function Side({ title, reasons }: { readonly title: string; readonly reasons: readonly Reason[] }) {
  return (
    <table className="reasons">
      <caption>{title}</caption>
      <thead className="unseen">
        <tr>
          <th scope="col">Reason</th>
          <th scope="col">Weight</th>
        </tr>
      </thead>
      <tbody>
        {reasons.map((reason) => (
          <tr key={reason.id}>
            <td>{keptTogether(reason.detail)}</td>
            <td className="figure">
              {numberWords(Math.abs(reason.weight), 1)}
              <div className="weight" aria-hidden="true">
                <div style={{ width: `${Math.min(1, Math.abs(reason.weight) / FULL_WEIGHT) * 100}%` }} />
              </div>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
