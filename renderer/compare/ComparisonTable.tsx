import type { Comparison } from '../../core/compare/comparison.ts';
import { partGiven } from '../../core/compare/neitherGives.ts';
import { differenceWords, numberWords } from '../words/numbers.ts';

interface ComparisonTableProps {
  readonly comparison: Comparison;
  readonly first: string;
  readonly second: string;
}

/** The measures of both windows side by side, with the difference. */
export function ComparisonTable({ comparison, first, second }: ComparisonTableProps) {
  const { given, neither } = partGiven(comparison.pairs);
  return (
    <>
      <table className="measures sideBySide">
        <thead>
          <tr>
            <th scope="col">Measure, unit</th>
            <th scope="col" className="figure">
              {first}
            </th>
            <th scope="col" className="figure">
              {second}
            </th>
            <th scope="col" className="figure">
              Difference
            </th>
          </tr>
        </thead>
        <tbody>
          {given.map((pair) => (
            <tr key={pair.id}>
              <th scope="row">
                {pair.words}
                {pair.unit !== '1' && <span className="soft">, {pair.unit}</span>}
              </th>
              <td className="figure">{valueWords(pair.first, pair.digits)}</td>
              <td className="figure">{valueWords(pair.second, pair.digits)}</td>
              <td className="figure">
                {pair.difference === null ? 'none' : differenceWords(pair.difference, pair.digits)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {neither !== null && <p className="soft">{neither}</p>}
    </>
  );
}

function valueWords(value: number | null, digits: number): string {
  return value === null ? 'cannot tell' : numberWords(value, digits);
}
