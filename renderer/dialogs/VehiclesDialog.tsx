import { Plus } from 'lucide-react';
import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { refreshShelf } from '../actions/refreshShelf.ts';
import { beginVehicle, chooseVehicle } from '../actions/vehicles.ts';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { Button } from '../widgets/Button.tsx';
import { CheckField } from '../widgets/CheckField.tsx';
import { Dialog } from '../widgets/Dialog.tsx';
import { vehicleWords } from '../words/terms.ts';
import type { DialogProps } from './dialogProps.ts';
import { EarlierSaves } from './EarlierSaves.tsx';

/** Every vehicle that is kept: found by a part of its name, opened by one click. */
export function VehiclesDialog({ onClose }: DialogProps) {
  const program = useProgram();
  const [typed, setTyped] = useState('');
  const [archive, setArchive] = useState(false);
  const vehicles = useStore(program.shelf, (shelf) => shelf.vehicles);
  const open = useStore(program.record, (state) => recordOf(state)?.id);
  useEffect(() => void refreshShelf(program), [program]);
  const found = vehicles.filter(
    ({ name, archived }) => (archive || !archived) && name.toLowerCase().includes(typed.trim().toLowerCase()),
  );
  return (
    <Dialog
      title="Vehicles"
      width="wide"
      onClose={onClose}
      foot={
        <>
          <span className="push">
            <CheckField label="Show the archive" checked={archive} onChecked={setArchive} />
          </span>
          <Button
            look="main"
            icon={Plus}
            onPress={() => {
              onClose();
              void beginVehicle(program);
            }}
          >
            New vehicle
          </Button>
        </>
      }
    >
      <input
        className="bareField"
        type="search"
        aria-label="Part of a name"
        placeholder="Part of a name"
        data-autofocus
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
      />
      {found.length === 0 ? (
        <p className="soft">
          {vehicles.length === 0 ? 'Vehicles you open are kept here.' : 'No vehicle is called that.'}
        </p>
      ) : (
        <ul className="shelfList">
          {found.map((vehicle) => (
            <li key={vehicle.id}>
              <button type="button" onClick={() => void chooseVehicle(program, vehicle.id)}>
                <span>{vehicle.name}</span>
                <span className="soft">
                  {[
                    ...(vehicle.id === open ? ['open now'] : []),
                    ...(vehicle.archived ? ['in the archive'] : []),
                    vehicleWords(vehicle),
                  ].join(', ')}
                </span>
              </button>
            </li>
          ))}
        </ul>
      )}
      {open !== undefined && <EarlierSaves vehicleId={open} onChosen={onClose} />}
    </Dialog>
  );
}
