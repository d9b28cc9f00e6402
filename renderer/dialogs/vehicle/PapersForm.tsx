import { setCosts, setIdentity, setPapers } from '../../../core/record/edits/vehicle.ts';
import type { Papers, VehicleRecord } from '../../../core/record/schema.ts';
import { useProgram } from '../../program/programContext.ts';
import { DateField } from '../../widgets/DateField.tsx';
import { NumberField } from '../../widgets/NumberField.tsx';
import { choicesOf, SelectField } from '../../widgets/SelectField.tsx';
import { TextField } from '../../widgets/TextField.tsx';

const YES_NO: Readonly<Record<Papers['inspectionOrdered'], string>> = {
  yes: 'Yes',
  no: 'No',
  unknown: 'Not recorded',
};

/** Whether an emission warranty may cover the part, what a wrong decision costs, and the papers of a replacement. */
export function PapersForm({ record }: { readonly record: VehicleRecord }) {
  const { record: store } = useProgram();
  const { edit } = store.getState();
  const { identity, costs, papers } = record;
  const set = (changed: Partial<Papers>): void => edit(setPapers(changed), Object.keys(changed).join());
  return (
    <div className="fields">
      <DateField
        label="First sold on"
        value={identity.firstSold}
        hint="Emission warranties count from this day."
        onValue={(firstSold) => edit(setIdentity({ firstSold }))}
      />
      <TextField
        label="Currency"
        value={costs.currency}
        maxLength={8}
        onValue={(currency) => edit(setCosts({ currency }), 'currency')}
      />
      <NumberField
        label="Price of the converter"
        unit={costs.currency}
        money
        value={costs.converterPrice === 0 ? null : costs.converterPrice}
        min={0}
        onValue={(price) => edit(setCosts({ converterPrice: price ?? 0 }))}
      />
      <NumberField
        label="Price of a labour hour"
        unit={costs.currency}
        money
        value={costs.labourHour === 0 ? null : costs.labourHour}
        min={0}
        onValue={(price) => edit(setCosts({ labourHour: price ?? 0 }))}
      />
      <h3 className="whole">Papers of a replacement</h3>
      <TextField label="Make, as registered" value={papers.make} onValue={(make) => set({ make })} />
      <TextField label="Part fitted" value={papers.partFitted} onValue={(partFitted) => set({ partFitted })} />
      <DateField label="Fitted on" value={papers.fittedOn} onValue={(fittedOn) => set({ fittedOn })} />
      <TextField label="Tag of the old part" value={papers.oldPartTag} onValue={(oldPartTag) => set({ oldPartTag })} />
      <SelectField
        label="Ordered by an inspection"
        value={papers.inspectionOrdered}
        choices={choicesOf<Papers['inspectionOrdered']>(YES_NO)}
        onValue={(inspectionOrdered) => set({ inspectionOrdered })}
      />
      <SelectField
        label="Statement of need signed"
        value={papers.statementSigned}
        choices={choicesOf<Papers['statementSigned']>(YES_NO)}
        onValue={(statementSigned) => set({ statementSigned })}
      />
      <TextField
        label="Why the part has to be replaced"
        className="whole"
        value={papers.reason}
        rows={3}
        maxLength={20_000}
        onValue={(reason) => set({ reason })}
      />
    </div>
  );
}
