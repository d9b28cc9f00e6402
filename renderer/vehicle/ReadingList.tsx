import { Pencil, Plus, Trash2 } from 'lucide-react';
import { useStore } from 'zustand';
import { bankWords } from '../../core/evidence/words/terms.ts';
import type { Reading, VehicleRecord } from '../../core/record/schema.ts';
import { goToReading } from '../actions/jump.ts';
import { deleteReading } from '../actions/notesAndReadings.ts';
import { CommandButton } from '../commands/CommandButton.tsx';
import { useProgram } from '../program/programContext.ts';
import { IconButton } from '../widgets/Button.tsx';
import { withUnit } from '../words/numbers.ts';
import { temperatureWords } from '../words/terms.ts';
import { ListPart, Row } from './Row.tsx';

/** The surface temperatures taken by hand. */
export function ReadingList({ record }: { readonly record: VehicleRecord }) {
  const readings = Object.values(record.readings).sort((a, b) => a.takenAt.localeCompare(b.takenAt));
  return (
    <ListPart
      title="Temperatures"
      add={<CommandButton id="vehicle.addReading" icon={Plus} signOnly />}
      empty={readings.length === 0 ? 'Converter inlet and outlet, taken by hand.' : null}
    >
      {readings.map((reading) => (
        <ReadingRow key={reading.id} reading={reading} />
      ))}
    </ListPart>
  );
}

function ReadingRow({ reading }: { readonly reading: Reading }) {
  const program = useProgram();
  const chosen = useStore(
    program.workspace,
    ({ selected }) => selected?.kind === 'reading' && selected.id === reading.id,
  );
  const words = `${temperatureWords(reading.inlet)} to ${temperatureWords(reading.outlet)}`;
  const facts = [
    ...(reading.bank === null ? [] : [bankWords(reading.bank)]),
    ...(reading.brick === null ? [] : [`brick ${reading.brick}`]),
    reading.rpm === null ? 'engine speed not recorded' : withUnit(reading.rpm, '1/min', 0),
  ];
  return (
    <Row chosen={chosen} first={words} second={facts.join(', ')} onChoose={() => goToReading(program, reading.id)}>
      <IconButton
        icon={Pencil}
        label={`Change the reading ${words}`}
        onPress={() => program.dialogs.getState().show({ kind: 'reading', readingId: reading.id })}
      />
      <IconButton
        icon={Trash2}
        label={`Delete the reading ${words}`}
        onPress={() => deleteReading(program, reading.id)}
      />
    </Row>
  );
}
