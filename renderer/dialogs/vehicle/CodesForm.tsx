import { Plus, Trash2 } from 'lucide-react';
import { useEffect, useRef, useState } from 'react';
import { CODE_STATUS_WORDS } from '../../../core/evidence/words/terms.ts';
import { addTroubleCode, removeTroubleCode, setTroubleCodeStatus } from '../../../core/record/edits/troubleCodes.ts';
import { setIdentity } from '../../../core/record/edits/vehicle.ts';
import type { TroubleCode, VehicleRecord } from '../../../core/record/schema.ts';
import { useProgram } from '../../program/programContext.ts';
import { Button, IconButton } from '../../widgets/Button.tsx';
import { Field } from '../../widgets/Field.tsx';
import { choicesOf, SelectField } from '../../widgets/SelectField.tsx';
import { TextField } from '../../widgets/TextField.tsx';

const CODE = /^[PCBU][0-3][0-9A-F]{3}$/;

/** What the engine computer and the customer say. */
export function CodesForm({ record }: { readonly record: VehicleRecord }) {
  const program = useProgram();
  const { edit } = program.record.getState();
  const codes = Object.values(record.troubleCodes).sort((a, b) => a.code.localeCompare(b.code));
  return (
    <>
      <AddCode onCode={(code) => edit(addTroubleCode({ id: program.newId(), code, status: 'confirmed' }))} />
      {codes.length === 0 && <p className="soft">No codes recorded. Read them before anything is cleared.</p>}
      <ul className="codeList">
        {codes.map((entry) => (
          <li key={entry.id}>
            <strong>{entry.code}</strong>
            <SelectField
              label={`Status of ${entry.code}`}
              value={entry.status}
              choices={choicesOf<TroubleCode['status']>(CODE_STATUS_WORDS)}
              onValue={(status) => edit(setTroubleCodeStatus(entry.id, status))}
            />
            <IconButton
              icon={Trash2}
              label={`Delete ${entry.code}`}
              onPress={() => edit(removeTroubleCode(entry.id))}
            />
          </li>
        ))}
      </ul>
      <TextField
        label="Complaint"
        value={record.identity.complaint}
        rows={3}
        maxLength={20_000}
        hint="In the customer's words. Stays out of evidence sheets unless you tick it in."
        onValue={(complaint) => edit(setIdentity({ complaint }), 'complaint')}
      />
    </>
  );
}

const codeIn = (typed: string): string => typed.trim().toUpperCase();

function AddCode({ onCode }: { onCode(code: string): void }) {
  const [typed, setTyped] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  // A code that was typed and not added yet counts all the same when the page goes.
  const latest = useRef({ typed, onCode });
  latest.current = { typed, onCode };
  useEffect(
    () => () => {
      const code = codeIn(latest.current.typed);
      if (CODE.test(code)) latest.current.onCode(code);
    },
    [],
  );
  const add = (): void => {
    const code = codeIn(typed);
    if (!CODE.test(code)) {
      setProblem('A code is a letter P, C, B or U, a digit 0 to 3 and three more, each 0 to 9 or A to F: P0420.');
      return;
    }
    setProblem(null);
    setTyped('');
    onCode(code);
  };
  return (
    <div className="addLine">
      <Field label="Trouble code" problem={problem}>
        {({ id, describedBy, invalid }) => (
          <input
            id={id}
            value={typed}
            maxLength={5}
            autoComplete="off"
            aria-describedby={describedBy}
            aria-invalid={invalid}
            onChange={(event) => setTyped(event.target.value)}
            onKeyDown={(event) => event.key === 'Enter' && add()}
          />
        )}
      </Field>
      <Button icon={Plus} onPress={add}>
        Add code
      </Button>
    </div>
  );
}
