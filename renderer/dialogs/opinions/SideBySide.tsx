import { differenceSentence, restingWords } from '../../../core/evidence/words/opinions.ts';
import type { OpinionsCompared } from '../../../core/opinions/compareOpinions.ts';
import type { RestingWindow } from '../../../core/record/opinionSchema.ts';
import type { VehicleRecord } from '../../../core/record/schema.ts';
import { KEPT_SPACE } from '../../words/numbers.ts';

interface SideBySideProps {
  readonly compared: OpinionsCompared;
  readonly record: VehicleRecord;
}

/** What differs first between two opinions, and which of their windows are the same. */
export function SideBySide({ compared, record }: SideBySideProps) {
  const { pairs, onlyFirst, onlySecond } = compared;
  const rows: readonly (readonly [RestingWindow, string])[] = [
    ...pairs.map(
      ({ first, share }) => [first, `both, ${Math.round(share * 100)}${KEPT_SPACE}% of their union`] as const,
    ),
    ...onlyFirst.map((window) => [window, 'only the first'] as const),
    ...onlySecond.map((window) => [window, 'only the second'] as const),
  ];
  return (
    <section className="firstDifference" aria-label="What differs first">
      <p>
        <strong>What differs first:</strong> {differenceSentence(compared, '.')}
      </p>
      {rows.length > 0 && (
        <table className="plainTable">
          <thead>
            <tr>
              <th scope="col">Window</th>
              <th scope="col">Who rests on it</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(([window, words]) => (
              <tr key={`${words} ${window.captureSha256} ${window.startS} ${window.endS} ${window.bank}`}>
                <td>{restingWords(window, record, '.')}</td>
                <td>{words}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
