import { useLayoutEffect, useState } from 'react';
import { useStore } from 'zustand';
import { DISAGREEMENT_WORDS } from '../../core/evidence/words/opinions.ts';
import { confidenceWords } from '../../core/opinions/confidence.ts';
import type { Disagreement } from '../../core/record/opinionSchema.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import { signOpinion } from '../actions/opinions.ts';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { emptyDraft, type SignDraft, whatIsMissing } from '../state/signDraft.ts';
import { Button } from '../widgets/Button.tsx';
import { Dialog } from '../widgets/Dialog.tsx';
import { NumberField } from '../widgets/NumberField.tsx';
import { choicesOf, SelectField } from '../widgets/SelectField.tsx';
import { TextField } from '../widgets/TextField.tsx';
import { goToWrongField } from '../widgets/wrongField.ts';
import type { DialogProps } from './dialogProps.ts';
import { FindingChoice } from './opinions/FindingChoice.tsx';
import { opinionChoices } from './opinions/opinionChoices.ts';
import { RestingWindows } from './opinions/RestingWindows.tsx';
import { Signature } from './opinions/Signature.tsx';
import { SigningMeans } from './opinions/SigningMeans.tsx';

/** A reader's own finding, signed. What was begun is kept until it is signed. */
export function SignDialog({ answers, onClose }: DialogProps & { readonly answers: string | null }) {
  const program = useProgram();
  const record = useStore(program.record, recordOf);
  if (record === null) return null;
  return <SignForm record={record} answers={answers} onClose={onClose} />;
}

interface SignFormProps extends DialogProps {
  readonly record: VehicleRecord;
  readonly answers: string | null;
}

function SignForm({ record, answers, onClose }: SignFormProps) {
  const program = useProgram();
  const [first] = useState(() => begun(program.dialogs.getState().signDraft, record, answers));
  useLayoutEffect(() => program.dialogs.getState().keepDraft(first), [program, first]);
  const draft = useStore(program.dialogs, (state) => state.signDraft) ?? first;
  const { reader, licence } = useStore(program.settings, (state) => state.settings);
  const [author, setAuthor] = useState({ name: reader, licence });
  const [problem, setProblem] = useState<string | null>(null);
  const [signing, setSigning] = useState(false);
  // Straight into the store: a field gives what was typed last also while the dialog goes.
  const change = (part: Partial<SignDraft>): void => {
    const { signDraft, keepDraft } = program.dialogs.getState();
    keepDraft({ ...(signDraft ?? first), ...part });
  };

  const sign = async (): Promise<void> => {
    if (goToWrongField(document)) return;
    const missing = whatIsMissing(draft, author.name);
    setProblem(missing);
    const { finding, confidence, without, vehicleId: _, ...rest } = draft;
    if (missing !== null || finding === null || confidence === null) return;
    setSigning(true);
    const windowIds = Object.keys(record.windows).filter((id) => !without.includes(id));
    const opinionId = await signOpinion(program, { ...rest, finding, confidence, author, windowIds });
    program.dialogs.getState().keepDraft(null);
    program.dialogs.getState().show({ kind: 'opinions', opinionId });
  };

  const choices = opinionChoices(record);
  return (
    <Dialog
      title="Sign an opinion"
      lead="Your own finding on this vehicle, with its reasons. Two opinions stay two; nobody averages them."
      width="wide"
      onClose={onClose}
      foot={
        <>
          {problem !== null && (
            <p className="fieldProblem push" role="alert">
              {problem}
            </p>
          )}
          <Button look="quiet" onPress={onClose}>
            Not yet
          </Button>
          <Button look="main" reason={signing ? 'It is being signed.' : null} onPress={() => void sign()}>
            Sign
          </Button>
        </>
      }
    >
      <FindingChoice chosen={draft.finding} onChoose={(finding) => change({ finding })} />
      <div className="fields">
        <NumberField
          label="How sure you are of it"
          unit="%"
          value={draft.confidence}
          min={1}
          max={99}
          whole
          hint={
            draft.confidence === null
              ? '1 to 99; 50 is an even chance.'
              : `In words: ${confidenceWords(draft.confidence)}.`
          }
          onValue={(confidence) => change({ confidence })}
        />
        {choices.length > 0 && (
          <SelectField
            label="It answers"
            value={draft.answers ?? ''}
            choices={[{ value: '', words: 'No other opinion' }, ...choices]}
            onValue={(id) => change({ answers: id === '' ? null : id })}
          />
        )}
        {draft.answers !== null && (
          <SelectField
            label="Where you disagree, because"
            value={draft.disagreement ?? 'none'}
            choices={choicesOf({ none: 'I do not disagree', ...DISAGREEMENT_WORDS } satisfies Record<
              Disagreement | 'none',
              string
            >)}
            onValue={(why) => change({ disagreement: why === 'none' ? null : why })}
          />
        )}
      </div>
      <TextField
        label="Reasons"
        value={draft.reasons}
        rows={4}
        maxLength={20_000}
        hint="What speaks for it, and what against."
        onValue={(reasons) => change({ reasons })}
      />
      <TextField
        label="The test that would settle it"
        value={draft.nextTest}
        rows={2}
        maxLength={20_000}
        onValue={(nextTest) => change({ nextTest })}
      />
      <RestingWindows record={record} without={draft.without} onWithout={(without) => change({ without })} />
      <Signature author={author} onAuthor={setAuthor} />
      <SigningMeans />
    </Dialog>
  );
}

/** What was begun on this vehicle and answers the same, or an empty sheet. */
function begun(kept: SignDraft | null, record: VehicleRecord, answers: string | null): SignDraft {
  if (kept === null || kept.vehicleId !== record.id) return emptyDraft(record.id, answers);
  return answers === null ? kept : { ...kept, answers };
}
