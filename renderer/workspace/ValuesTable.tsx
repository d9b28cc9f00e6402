import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { ROLE_FACTS } from '../../core/capture/roles.ts';
import { useProgram } from '../program/programContext.ts';
import type { HeldCapture } from '../state/captureStore.ts';
import { momentWords, timeForm } from '../words/captureTimes.ts';
import { numberWords } from '../words/numbers.ts';

interface ShownValue {
  readonly channelId: string;
  readonly sampleS: number | null;
  readonly value: number | null;
}

/** The values at the cursor as a table: every channel of the capture, with the time of its own sample. */
export function ValuesTable({ held }: { readonly held: HeldCapture }) {
  const { workspace } = useProgram();
  const cursorS = useStore(workspace, (state) => state.captures[held.captureId]?.cursorS ?? null);
  const [values, setValues] = useState<readonly ShownValue[]>([]);
  useEffect(() => {
    if (cursorS === null) return;
    let latest = true;
    const ids = held.summary.channels.map((channel) => channel.id);
    void held.source.valuesAt(ids, cursorS).then((found) => latest && setValues(found));
    return () => {
      latest = false;
    };
  }, [held, cursorS]);
  if (cursorS === null) return <p className="valuesTable soft">Put the cursor on the traces to read their values.</p>;
  return (
    <div className="valuesTable">
      <table className="plainTable">
        <caption>
          Values at {momentWords(cursorS, timeForm(held.summary.durationS), 1)}: the last sample of each channel up to
          there
        </caption>
        <thead>
          <tr>
            <th scope="col">Channel</th>
            <th scope="col" className="figure">
              Value
            </th>
            <th scope="col">Unit</th>
            <th scope="col" className="figure">
              Sampled at, s
            </th>
          </tr>
        </thead>
        <tbody>
          {held.summary.channels.map((channel) => {
            const found = values.find((one) => one.channelId === channel.id);
            return (
              <tr key={channel.id}>
                <th scope="row">{channel.name}</th>
                <td className="figure">
                  {found?.value == null ? 'not recorded' : numberWords(found.value, ROLE_FACTS[channel.role].digits)}
                </td>
                <td>{channel.unit === '1' ? '' : channel.unit}</td>
                <td className="figure">{found?.sampleS == null ? 'not recorded' : numberWords(found.sampleS, 2)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
