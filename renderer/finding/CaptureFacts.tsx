import { Columns3 } from 'lucide-react';
import { useStore } from 'zustand';
import type { CaptureSummary, ChannelSummary } from '../../core/bridge/coreMessages.ts';
import { CAPTURE_KIND_WORDS, roleWords } from '../../core/evidence/words/terms.ts';
import { setCaptureKind } from '../../core/record/edits/captures.ts';
import type { CaptureRef } from '../../core/record/schema.ts';
import { CommandButton } from '../commands/CommandButton.tsx';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { choicesOf, SelectField } from '../widgets/SelectField.tsx';
import { bytesWords, countWords, numberWords, withUnit } from '../words/numbers.ts';
import { durationWords } from '../words/times.ts';
import { OddThings } from './OddThings.tsx';

/** What was found in the shown capture: layout, length, channels with their rates, and everything odd. */
export function CaptureFacts() {
  const program = useProgram();
  const captureId = useStore(program.workspace, (state) => state.captureId);
  const capture = useStore(program.record, (state) => recordOf(state)?.captures[captureId ?? '']);
  const summary = useStore(program.captures, (state) => state.held[captureId ?? '']?.summary);
  if (capture === undefined) return <p className="report soft">No capture is shown.</p>;
  return (
    <div className="report">
      <h2 className="fileName">{capture.name}</h2>
      <SelectField
        label="What it shows"
        value={capture.kind}
        choices={choicesOf<CaptureRef['kind']>(CAPTURE_KIND_WORDS)}
        onValue={(kind) => program.record.getState().edit(setCaptureKind(capture.id, kind))}
      />
      {summary === undefined ? (
        <p className="soft">Its file is not open.</p>
      ) : (
        <Found captureId={capture.id} summary={summary} />
      )}
      <p className="hash soft">SHA-256 {capture.sha256}</p>
    </div>
  );
}

function Found({ captureId, summary }: { readonly captureId: string; readonly summary: CaptureSummary }) {
  const { durationS, rows, bytes, layout, startClock, warnings, channels } = summary;
  return (
    <>
      <p>{layout.words}</p>
      <p className="soft">
        {[durationWords(durationS), countWords(rows, 'row'), bytesWords(bytes)].join(', ')}
        {startClock === null ? '' : `, clock starts at ${startClock.replace('T', ' ')}`}
      </p>
      <OddThings captureId={captureId} warnings={warnings} />
      <section className="reportPart">
        <h3>Channels</h3>
        <table className="measures channels">
          <thead>
            <tr>
              <th scope="col">Name in the file, unit</th>
              <th scope="col" className="figure">
                Rate, Hz
              </th>
            </tr>
          </thead>
          <tbody>
            {channels.map((channel) => (
              <ChannelRow key={channel.id} channel={channel} />
            ))}
          </tbody>
        </table>
        <CommandButton id="vehicle.columns" icon={Columns3} words="Columns of this capture" />
      </section>
    </>
  );
}

function ChannelRow({ channel }: { readonly channel: ChannelSummary }) {
  const { name, unit, role, bank, facts } = channel;
  const { medianRateHz, renewalRateHz } = facts;
  const jitterMs = Math.round(facts.jitterS * 1000);
  const held = renewalRateHz > 0 && renewalRateHz < medianRateHz * 0.9;
  return (
    <tr>
      <th scope="row">
        {name}
        {unit !== '1' && <span className="soft">, {unit}</span>}
        <span className="channelRole soft">{roleWords(role, bank)}</span>
      </th>
      <td className="figure">
        {numberWords(medianRateHz, rateDigits(medianRateHz))}
        {held && <span className="channelRole soft">new {numberWords(renewalRateHz, rateDigits(renewalRateHz))}</span>}
        {jitterMs >= 1 && <span className="channelRole soft">jitter {withUnit(jitterMs, 'ms', 0)}</span>}
      </td>
    </tr>
  );
}

function rateDigits(rateHz: number): number {
  return rateHz < 20 ? 1 : 0;
}
