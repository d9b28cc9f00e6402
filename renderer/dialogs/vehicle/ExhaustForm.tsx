import { Plus, Trash2 } from 'lucide-react';
import { BRICK_PLACE_WORDS } from '../../../core/evidence/words/terms.ts';
import { addBrick, changeBrick, removeBrick } from '../../../core/record/edits/bricks.ts';
import { setIdentity } from '../../../core/record/edits/vehicle.ts';
import type { Brick, Identity, VehicleRecord } from '../../../core/record/schema.ts';
import { useProgram } from '../../program/programContext.ts';
import { Button, IconButton } from '../../widgets/Button.tsx';
import { CheckField } from '../../widgets/CheckField.tsx';
import { choicesOf, SelectField } from '../../widgets/SelectField.tsx';
import { BANK_CHOICES, bankOf, bankValue } from '../bankChoice.ts';

const REAR_SENSOR_WORDS: Readonly<Record<Identity['rearSensor'], string>> = {
  yes: 'Yes',
  no: 'No, none behind the converter',
  unknown: 'Not known',
};

/** Places along the exhaust; as many as a record takes. */
const POSITIONS = Array.from({ length: 9 }, (_, i) => ({ value: String(i + 1), words: String(i + 1) }));

/** How the exhaust is laid out: bricks in the order of the gas, and where the rear sensor sits. */
export function ExhaustForm({ record }: { readonly record: VehicleRecord }) {
  const program = useProgram();
  const { edit } = program.record.getState();
  const bricks = Object.values(record.bricks).sort((a, b) => (a.bank ?? 0) - (b.bank ?? 0) || a.position - b.position);
  return (
    <>
      <SelectField
        label="Oxygen sensor behind the converter"
        className="short"
        value={record.identity.rearSensor}
        choices={choicesOf<Identity['rearSensor']>(REAR_SENSOR_WORDS)}
        hint="Vehicles before model year 1996 in the United States may have none; then only temperatures speak."
        onValue={(rearSensor) => edit(setIdentity({ rearSensor }))}
      />
      {bricks.length === 0 && <p className="soft">No brick is listed yet. Add them in the order of the gas.</p>}
      <ol className="brickList">
        {bricks.map((brick) => (
          <BrickLine key={brick.id} brick={brick} />
        ))}
      </ol>
      <Button icon={Plus} onPress={() => edit(addBrick(nextBrick(program.newId(), bricks)))}>
        Add a brick
      </Button>
    </>
  );
}

function nextBrick(id: string, bricks: readonly Brick[]): Brick {
  const last = bricks.at(-1);
  return {
    id,
    bank: last?.bank ?? 1,
    position: Math.min(POSITIONS.length, (last?.position ?? 0) + 1),
    place: last === undefined ? 'closeCoupled' : 'underfloor',
    beforeRearSensor: last === undefined,
  };
}

function BrickLine({ brick }: { readonly brick: Brick }) {
  const { record } = useProgram();
  const { edit } = record.getState();
  const name = `brick ${brick.position}`;
  const change = (changed: Partial<Omit<Brick, 'id'>>): void => edit(changeBrick(brick.id, changed));
  return (
    <li>
      <SelectField
        label="Brick"
        value={String(brick.position)}
        choices={POSITIONS}
        onValue={(position) => change({ position: Number(position) })}
      />
      <SelectField
        label={`Bank of ${name}`}
        value={bankValue(brick.bank)}
        choices={BANK_CHOICES}
        onValue={(bank) => change({ bank: bankOf(bank) })}
      />
      <SelectField
        label={`Place of ${name}`}
        value={brick.place}
        choices={choicesOf<Brick['place']>(BRICK_PLACE_WORDS)}
        onValue={(place) => change({ place })}
      />
      <CheckField
        label={`Rear sensor sits behind ${name}`}
        checked={brick.beforeRearSensor}
        onChecked={(beforeRearSensor) => change({ beforeRearSensor })}
      />
      <IconButton icon={Trash2} label={`Delete ${name}`} onPress={() => edit(removeBrick(brick.id))} />
    </li>
  );
}
