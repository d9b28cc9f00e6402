import { useState } from 'react';
import type { EarlierSave } from '../../core/bridge/shellMessages.ts';
import { goBackTo } from '../actions/openVehicle.ts';
import { useProgram } from '../program/programContext.ts';
import { Button } from '../widgets/Button.tsx';
import { instantWords } from '../words/times.ts';

interface EarlierSavesProps {
  readonly vehicleId: string;
  onChosen(): void;
}

/** Saves behind the newest one of the open vehicle; going back to one keeps the newest aside. */
export function EarlierSaves({ vehicleId, onChosen }: EarlierSavesProps) {
  const program = useProgram();
  const [saves, setSaves] = useState<readonly EarlierSave[] | null>(null);
  if (saves === null) {
    return (
      <Button look="quiet" onPress={() => void program.shell.earlierSaves({ id: vehicleId }).then(setSaves)}>
        Earlier saves of the open vehicle
      </Button>
    );
  }
  const goBack = (generation: string): void => {
    onChosen();
    void goBackTo(program, generation);
  };
  return (
    <section>
      <h3>Earlier saves of the open vehicle</h3>
      {saves.length === 0 && <p className="soft">There is none yet.</p>}
      <ul className="shelfList">
        {saves.map(({ generation, savedAt, kind }) => (
          <li key={generation}>
            <button type="button" onClick={() => goBack(generation)}>
              <span>Go back to {instantWords(savedAt)}</span>
              <span className="soft">{kind === 'saved' ? 'an ordinary save' : 'set aside'}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
