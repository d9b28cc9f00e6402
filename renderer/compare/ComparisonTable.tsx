import { beyondScatter, scatterSentence } from '../../core/compare/beyondScatter.ts';
import type { Comparison, MeasurePair } from '../../core/compare/comparison.ts';
import { partGiven } from '../../core/compare/neitherGives.ts';
import { differenceWords, measuredWords, numberWords } from '../words/numbers.ts';

interface ComparisonTableProps {
  readonly comparison: Comparison;
  readonly first: string;
  readonly second: string;
}

/** The measures of both windows side by side, with the difference. */
export function ComparisonTable({ comparison, first, second }: ComparisonTableProps) {
  const { given, neither } = partGiven(comparison.pairs);
  const scatter = scatterSentence(given);
  return (
    <>
      {scatter !== null && <p className="soft">{scatter} In bold: those that do.</p>}
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
            <th scope="col" className="figure">
              95 % interval
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
                <Difference pair={pair} />
              </td>
              <td className="figure soft">{intervalWords(pair)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {neither !== null && <p className="soft">{neither}</p>}
    </>
  );
}

/** In bold where it is more than scatter. */
function Difference({ pair }: { readonly pair: MeasurePair }) {
  if (pair.difference === null) return 'none';
  const words = differenceWords(pair.difference, pair.digits);
  return beyondScatter(pair) ? <strong>{words}</strong> : words;
}

function intervalWords({ difference, interval, digits }: MeasurePair): string {
  return difference === null ? 'none' : (measuredWords(difference, interval, digits).interval ?? 'none');
}

function valueWords(value: number | null, digits: number): string {
  return value === null ? 'none' : numberWords(value, digits);
}
