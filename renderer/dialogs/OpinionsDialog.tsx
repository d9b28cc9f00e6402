import { Reply, Undo2 } from 'lucide-react';
import { useState } from 'react';
import { useStore } from 'zustand';
import { compareOpinions } from '../../core/opinions/compareOpinions.ts';
import { withdrawalOf } from '../../core/opinions/withdrawn.ts';
import type { Opinion } from '../../core/record/opinionSchema.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { useCheckedOpinions } from '../vehicle/useCheckedOpinions.ts';
import { Button } from '../widgets/Button.tsx';
import { Dialog } from '../widgets/Dialog.tsx';
import { type Choice, SelectField } from '../widgets/SelectField.tsx';
import type { DialogProps } from './dialogProps.ts';
import { OpinionReport } from './opinions/OpinionReport.tsx';
import { opinionChoices } from './opinions/opinionChoices.ts';
import { SideBySide } from './opinions/SideBySide.tsx';

/** Opinions to be read, one alone or two side by side. */
export function OpinionsDialog({ opinionId, onClose }: DialogProps & { readonly opinionId: string | null }) {
  const program = useProgram();
  const record = useStore(program.record, recordOf);
  if (record === null) return null;
  return <Opinions record={record} opinionId={opinionId} onClose={onClose} />;
}

interface OpinionsProps extends DialogProps {
  readonly record: VehicleRecord;
  readonly opinionId: string | null;
}

function Opinions({ record, opinionId, onClose }: OpinionsProps) {
  const { dialogs, record: store } = useProgram();
  const links = useCheckedOpinions(record);
  const choices = opinionChoices(record);
  const [firstId, setFirstId] = useState(opinionId ?? choices.at(-1)?.value ?? '');
  const first = opinionOf(record, firstId);
  const [besideId, setBesideId] = useState(() => (first === null ? '' : besideOf(first, choices)));
  const beside = besideId === firstId ? null : opinionOf(record, besideId);
  const readOnly = useStore(store, (state) => state.readOnly);
  if (first === null) return null;

  const entries = links?.map(({ entry }) => entry) ?? Object.values(record.opinions);
  const report = (opinion: Opinion) => (
    <OpinionReport
      key={opinion.id}
      opinion={opinion}
      record={record}
      link={links?.find(({ entry }) => entry.id === opinion.id) ?? null}
      withdrawn={withdrawalOf(entries, opinion.id)}
    />
  );
  const reason = readOnly ? 'This record was made by a newer program and can only be read.' : null;
  const gone = withdrawalOf(entries, first.id) === null ? null : 'It is withdrawn already.';
  return (
    <Dialog
      title="Opinions"
      lead="Two opinions stay two: nothing is averaged, and neither is said to be right."
      width={beside === null ? 'wide' : 'page'}
      onClose={onClose}
      foot={
        <>
          <Button
            look="quiet"
            icon={Undo2}
            className="push"
            reason={reason ?? gone}
            onPress={() => dialogs.getState().show({ kind: 'withdraw', opinionId: first.id })}
          >
            Withdraw it
          </Button>
          <Button
            look="outline"
            icon={Reply}
            reason={reason}
            onPress={() => dialogs.getState().show({ kind: 'sign', answers: first.id })}
          >
            Answer it
          </Button>
          <Button look="main" onPress={onClose}>
            Done
          </Button>
        </>
      }
    >
      <div className="opinionChoice">
        <SelectField label="Opinion" value={firstId} choices={choices} autoFocus onValue={setFirstId} />
        {choices.length > 1 && (
          <SelectField
            label="Beside it"
            value={beside === null ? '' : besideId}
            choices={[{ value: '', words: 'Nothing' }, ...choices.filter(({ value }) => value !== firstId)]}
            onValue={setBesideId}
          />
        )}
      </div>
      {beside !== null && <SideBySide compared={compareOpinions(first, beside)} record={record} />}
      <div className={beside === null ? 'opinionsRead' : 'opinionsRead two'}>
        {report(first)}
        {beside !== null && report(beside)}
      </div>
    </Dialog>
  );
}

/** What is read beside an opinion at first: the one that it answers; what a blind reading hid, where it came from one. */
function besideOf({ id, answers, reading }: Opinion, choices: readonly Choice<string>[]): string {
  if (answers !== null || reading === undefined) return answers ?? '';
  return choices.filter(({ value }) => value !== id).at(-1)?.value ?? '';
}

function opinionOf(record: VehicleRecord, id: string): Opinion | null {
  const entry = Object.hasOwn(record.opinions, id) ? record.opinions[id] : undefined;
  return entry?.kind === 'opinion' ? entry : null;
}
