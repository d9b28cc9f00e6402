import { useStore } from 'zustand';
import type { KeptThermalReading } from '../../core/findings/vehicleScore.ts';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { differenceWords } from '../words/numbers.ts';
import { temperatureWords } from '../words/terms.ts';

/** The surface temperatures as they were typed, the rise, and what it says. */
export function ThermalTable({ readings }: { readonly readings: readonly KeptThermalReading[] }) {
  const { record } = useProgram();
  const kept = useStore(record, (state) => recordOf(state)?.readings);
  if (readings.length === 0) return null;
  return (
    <section className="reportPart">
      <h3>Temperatures</h3>
      <table className="measures">
        <thead>
          <tr>
            <th scope="col">Inlet</th>
            <th scope="col">Outlet</th>
            <th scope="col" className="figure">
              Rise, K
            </th>
            <th scope="col" className="figure">
              95 % interval
            </th>
          </tr>
        </thead>
        <tbody>
          {readings.map(({ readingId, reading }) => {
            const typed = kept?.[readingId];
            const [low, high] = reading.riseInterval;
            return (
              <tr key={readingId}>
                <td>{typed === undefined ? 'not recorded' : temperatureWords(typed.inlet)}</td>
                <td>{typed === undefined ? 'not recorded' : temperatureWords(typed.outlet)}</td>
                <td className="figure">{differenceWords(reading.riseC, 0)}</td>
                <td className="figure soft">
                  {differenceWords(low, 0)} to {differenceWords(high, 0)}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <ul className="thermalWords">
        {readings.map(({ readingId, reading }) => (
          <li key={readingId}>{reading.reading}</li>
        ))}
      </ul>
    </section>
  );
}
