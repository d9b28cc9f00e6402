import { useState } from 'react';
import { renameVehicle, setIdentity } from '../../../core/record/edits/vehicle.ts';
import type { Identity, VehicleRecord } from '../../../core/record/schema.ts';
import { useProgram } from '../../program/programContext.ts';
import { NumberField } from '../../widgets/NumberField.tsx';
import { SelectField } from '../../widgets/SelectField.tsx';
import { TextField } from '../../widgets/TextField.tsx';

interface IdentityFormProps {
  readonly record: VehicleRecord;
  readonly focusName: boolean;
}

type MileageUnit = NonNullable<Identity['mileage']>['unit'];

/** Who the vehicle is. */
export function IdentityForm({ record, focusName }: IdentityFormProps) {
  const { record: store } = useProgram();
  const { edit } = store.getState();
  const { identity } = record;
  const set = (changed: Partial<Identity>): void => edit(setIdentity(changed));
  /** Typed letter by letter: one step until the field is left. */
  const typed =
    (field: 'description' | 'vin' | 'plate' | 'customer') =>
    (text: string): void =>
      edit(setIdentity({ [field]: text }), field);
  const { mileage } = identity;
  // A unit chosen before there is a figure is no mileage of 0 yet.
  const [chosenUnit, setChosenUnit] = useState<MileageUnit>('km');
  const mileageUnit = mileage?.unit ?? chosenUnit;
  return (
    <div className="fields">
      <TextField
        label="Name"
        className="whole"
        value={identity.name}
        hint="What the shop calls it."
        autoFocus={focusName}
        onValue={(name) => name.trim() !== '' && edit(renameVehicle(name.trim()), 'name of vehicle')}
      />
      <TextField label="Description" className="whole" value={identity.description} onValue={typed('description')} />
      <NumberField
        label="Model year"
        value={identity.modelYear}
        min={1900}
        max={2200}
        whole
        onValue={(modelYear) => set({ modelYear })}
      />
      <NumberField
        label="Engine displacement"
        unit="L"
        value={identity.engineLitres}
        min={0.05}
        max={30}
        onValue={(engineLitres) => set({ engineLitres })}
      />
      <TextField label="Vehicle identification number" value={identity.vin} onValue={typed('vin')} />
      <NumberField
        label="Mileage"
        value={mileage?.value ?? null}
        min={0}
        whole
        onValue={(value) => set({ mileage: value === null ? null : { value, unit: mileageUnit } })}
      />
      <SelectField
        label="Mileage in"
        value={mileageUnit}
        choices={[
          { value: 'km', words: 'km' },
          { value: 'mi', words: 'mi' },
        ]}
        onValue={(unit) => {
          setChosenUnit(unit);
          if (mileage !== null) set({ mileage: { ...mileage, unit } });
        }}
      />
      <TextField label="Number plate" value={identity.plate} onValue={typed('plate')} />
      <TextField
        label="Customer"
        className="whole"
        value={identity.customer}
        rows={2}
        maxLength={20_000}
        hint="Stays out of evidence sheets unless you tick it in."
        onValue={typed('customer')}
      />
    </div>
  );
}
