import { FolderOpen, Plus } from 'lucide-react';
import { useStore } from 'zustand';
import { openPicked } from '../actions/openCaptures.ts';
import { openEarlierSave } from '../actions/openVehicle.ts';
import { chooseVehicle } from '../actions/vehicles.ts';
import { CommandButton } from '../commands/CommandButton.tsx';
import { useProgram } from '../program/programContext.ts';
import type { DamagedVehicle } from '../state/shelfStore.ts';
import { Button } from '../widgets/Button.tsx';
import { ProblemNote } from '../widgets/ProblemNote.tsx';
import { bytesWords } from '../words/numbers.ts';
import { vehicleWords } from '../words/terms.ts';
import { instantWords } from '../words/times.ts';
import { OpeningJobs } from '../workspace/OpeningJobs.tsx';
import { Problems } from '../workspace/Problems.tsx';
import { SampleList } from './SampleList.tsx';
import { StartStrip } from './StartStrip.tsx';

const SHOWN = 8;

/** Where one begins: with drives that can be opened at once, and with what was open before. */
export function StartPage() {
  const program = useProgram();
  const damaged = useStore(program.shelf, (shelf) => shelf.damaged);
  return (
    <main className="startPage" tabIndex={-1}>
      <StartStrip />
      <header className="startHead">
        <h1>Does this converter store oxygen? Open a recorded drive and see.</h1>
        <div className="startDeeds">
          <CommandButton id="file.open" icon={FolderOpen} look="main" words="Open a capture" />
          <CommandButton id="vehicle.new" icon={Plus} look="outline" words="New vehicle" />
          <p className="soft">or drop files anywhere on this window. They are only read, never changed.</p>
        </div>
        <OpeningJobs />
        <Problems places={['open', 'vehicle', 'save']} />
        {damaged !== null && <Damaged damaged={damaged} />}
      </header>
      <div className="startLists">
        <section aria-labelledby="start-samples">
          <h2 id="start-samples">Sample drives</h2>
          <p className="soft">Invented by a simulation: no real vehicle. One click to see a finding.</p>
          <SampleList onOpen={(drive) => void openPicked(program, [drive])} />
        </section>
        <div>
          <Vehicles />
          <Recent />
        </div>
      </div>
    </main>
  );
}

function Vehicles() {
  const program = useProgram();
  const all = useStore(program.shelf, (shelf) => shelf.vehicles);
  const vehicles = all.filter((vehicle) => !vehicle.archived);
  return (
    <section aria-labelledby="start-vehicles">
      <h2 id="start-vehicles">Vehicles</h2>
      {vehicles.length === 0 && <p className="soft">Each vehicle you work on is kept here with all it needs.</p>}
      <ul className="shelfList">
        {vehicles.slice(0, SHOWN).map((vehicle) => (
          <li key={vehicle.id}>
            <button type="button" onClick={() => void chooseVehicle(program, vehicle.id)}>
              <span>{vehicle.name}</span>
              <span className="soft">{vehicleWords(vehicle)}</span>
            </button>
          </li>
        ))}
      </ul>
      {all.length > SHOWN && <CommandButton id="vehicle.list" words="All vehicles" />}
    </section>
  );
}

function Recent() {
  const program = useProgram();
  const recent = useStore(program.shelf, (shelf) => shelf.recent);
  return (
    <section aria-labelledby="start-recent">
      <h2 id="start-recent">Recent captures</h2>
      {recent.length === 0 && <p className="soft">Files you open are listed here.</p>}
      <ul className="shelfList">
        {recent.slice(0, SHOWN).map((capture) => (
          <li key={capture.token}>
            <button
              type="button"
              onClick={() => void (capture.there ? openPicked(program, [capture]) : lookFor(capture))}
            >
              <span>{capture.name}</span>
              <span className="soft">
                {capture.there ? bytesWords(capture.bytes) : 'not found where it was; say where it is'}
              </span>
            </button>
          </li>
        ))}
      </ul>
      {recent.length > 0 && <CommandButton id="file.clearRecent" />}
    </section>
  );

  async function lookFor({ sha256, name }: (typeof recent)[number]): Promise<void> {
    const found = await program.shell.locateCapture({ sha256, name });
    if (found !== null) await openPicked(program, [found]);
  }
}

/** A vehicle whose newest save cannot be read: it is never opened in silence; the good saves behind it are offered. */
function Damaged({ damaged }: { readonly damaged: DamagedVehicle }) {
  const program = useProgram();
  return (
    <ProblemNote problem={damaged.problem} onDismiss={() => program.shelf.setState({ damaged: null })}>
      <div className="earlierSaves">
        {damaged.earlier.slice(0, 5).map(({ generation, savedAt }) => (
          <Button key={generation} onPress={() => void openEarlierSave(program, damaged.id, generation)}>
            Open the save of {instantWords(savedAt)}
          </Button>
        ))}
      </div>
    </ProblemNote>
  );
}
