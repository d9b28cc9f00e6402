import { type FormEvent, useState } from 'react';
import { useStore } from 'zustand';
import { changeReading } from '../../core/record/edits/readings.ts';
import type { Reading, Temperature } from '../../core/record/schema.ts';
import { takeReading } from '../actions/notesAndReadings.ts';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { Button } from '../widgets/Button.tsx';
import { CautionList } from '../widgets/CautionList.tsx';
import { Dialog } from '../widgets/Dialog.tsx';
import { NumberField } from '../widgets/NumberField.tsx';
import { SelectField } from '../widgets/SelectField.tsx';
import { goToWrongField } from '../widgets/wrongField.ts';
import { cautions } from '../words/cautions.ts';
import { TEMPERATURE_UNITS } from '../words/terms.ts';
import { BANK_CHOICES, bankOf, bankValue } from './bankChoice.ts';
import type { DialogProps } from './dialogProps.ts';

const UNIT_CHOICES = [
  { value: 'C', words: '°C' },
  { value: 'F', words: '°F' },
  { value: 'K', words: 'K' },
] as const;

type Draft = Pick<Reading, 'bank' | 'brick' | 'rpm' | 'emissivity'> & {
  readonly inlet: number | null;
  readonly outlet: number | null;
  readonly unit: Temperature['unit'];
};

/** Inlet and outlet surface temperature of a brick, as they were read off, with the unit they were read in. */
export function ReadingDialog({ readingId, onClose }: DialogProps & { readonly readingId: string | null }) {
  const program = useProgram();
  const kept = useStore(program.record, (state) => recordOf(state)?.readings[readingId ?? '']);
  const [draft, setDraft] = useState<Draft>(() => draftOf(program.settings.getState().settings.temperatureUnit, kept));
  const [problem, setProblem] = useState<string | null>(null);
  const change = (part: Partial<Draft>): void => setDraft((before) => ({ ...before, ...part }));

  const keep = (event: FormEvent): void => {
    event.preventDefault();
    if (goToWrongField(document)) return;
    const { inlet, outlet, unit, ...rest } = draft;
    if (inlet === null || outlet === null) {
      setProblem('Type both temperatures: converter inlet and outlet.');
      return;
    }
    const typed = { ...rest, inlet: { value: inlet, unit }, outlet: { value: outlet, unit } };
    if (kept === undefined) takeReading(program, { ...typed, captureId: program.workspace.getState().captureId });
    else program.record.getState().edit(changeReading(kept.id, typed));
    onClose();
  };

  return (
    <Dialog
      title={kept === undefined ? 'Temperature reading' : 'Change the temperature reading'}
      lead="Warmed up at 2000 to 2500 1/min, same kind of spot on inlet and outlet, within ten seconds of each other (common practice, no source)."
      width="wide"
      onClose={onClose}
    >
      <form onSubmit={keep} className="readingForm">
        <div className="fields">
          <NumberField
            label="Converter inlet"
            unit={TEMPERATURE_UNITS[draft.unit]}
            value={draft.inlet}
            autoFocus
            onValue={(inlet) => change({ inlet })}
          />
          <NumberField
            label="Converter outlet"
            unit={TEMPERATURE_UNITS[draft.unit]}
            value={draft.outlet}
            onValue={(outlet) => change({ outlet })}
          />
          <SelectField
            label="Unit of the instrument"
            value={draft.unit}
            choices={UNIT_CHOICES}
            onValue={(unit) => change({ unit })}
          />
          <NumberField label="Engine speed" unit="1/min" value={draft.rpm} min={0} onValue={(rpm) => change({ rpm })} />
          <NumberField
            label="Emissivity set on the instrument"
            value={draft.emissivity}
            min={0.01}
            max={1}
            hint="Leave empty for a contact probe."
            onValue={(emissivity) => change({ emissivity })}
          />
          <SelectField
            label="Bank"
            value={bankValue(draft.bank)}
            choices={BANK_CHOICES}
            onValue={(bank) => change({ bank: bankOf(bank) })}
          />
          <NumberField
            label="Brick along the exhaust"
            value={draft.brick}
            min={1}
            max={9}
            whole
            hint="1 is nearest to the engine."
            onValue={(brick) => change({ brick })}
          />
        </div>
        {problem !== null && (
          <p className="fieldProblem" role="alert">
            {problem}
          </p>
        )}
        <CautionList cautions={cautions('hot', 'gas', 'stands', 'fire', 'turning')} />
        <div className="formFoot">
          <Button look="quiet" onPress={onClose}>
            Cancel
          </Button>
          <Button look="main" type="submit">
            {kept === undefined ? 'Add reading' : 'Change reading'}
          </Button>
        </div>
      </form>
    </Dialog>
  );
}

function draftOf(unit: Temperature['unit'], kept: Reading | undefined): Draft {
  if (kept === undefined)
    return { inlet: null, outlet: null, unit, bank: null, brick: null, rpm: null, emissivity: null };
  const { inlet, outlet, bank, brick, rpm, emissivity } = kept;
  return { inlet: inlet.value, outlet: outlet.value, unit: inlet.unit, bank, brick, rpm, emissivity };
}
