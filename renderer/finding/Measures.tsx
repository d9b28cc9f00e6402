import { CircleHelp } from 'lucide-react';
import { measureWords } from '../../core/evidence/words/terms.ts';
import type { MeasureValue } from '../../core/measures/measure.ts';
import { useProgram } from '../program/programContext.ts';
import { Button } from '../widgets/Button.tsx';
import { measuredWords } from '../words/numbers.ts';

/** The numbers computed over the window, with units and intervals; or why there is none. */
export function Measures({ measures }: { readonly measures: readonly MeasureValue[] }) {
  const { dialogs } = useProgram();
  const present = measures.filter((measure) => measure.value !== null);
  const missing = measures.filter((measure) => measure.value === null);
  return (
    <section className="reportPart">
      <h3>Measures</h3>
      {present.length > 0 && (
        <table className="measures">
          <thead>
            <tr>
              <th scope="col">Measure, unit</th>
              <th scope="col" className="figure">
                Value
              </th>
              <th scope="col" className="figure">
                95 % interval
              </th>
            </tr>
          </thead>
          <tbody>
            {present.map((measure) => (
              <MeasureRow key={measure.id} measure={measure} />
            ))}
          </tbody>
        </table>
      )}
      {missing.length > 0 && (
        <ul className="missingMeasures">
          {missing.map((measure) => (
            <li key={measure.id}>
              {measureWords(measure.id).words}: <span className="soft">{measure.missing}</span>
            </li>
          ))}
        </ul>
      )}
      <Button look="quiet" icon={CircleHelp} onPress={() => dialogs.getState().show({ kind: 'measures' })}>
        What the measures mean
      </Button>
    </section>
  );
}

function MeasureRow({ measure }: { readonly measure: MeasureValue }) {
  const { words, unit, digits } = measureWords(measure.id);
  if (measure.value === null) return null;
  const shown = measuredWords(measure.value, measure.interval, digits);
  return (
    <tr data-measure={measure.id}>
      <th scope="row">
        {words}
        {unit !== '1' && <span className="soft">, {unit}</span>}
      </th>
      <td className="figure">{shown.value}</td>
      <td className="figure soft">{shown.interval ?? 'none'}</td>
    </tr>
  );
}
