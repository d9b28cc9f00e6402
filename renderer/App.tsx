import { useStore } from 'zustand';
import { Dialogs } from './dialogs/Dialogs.tsx';
import { useProgram } from './program/programContext.ts';
import { StartPage } from './start/StartPage.tsx';
import { recordOf } from './state/recordStore.ts';
import { Centre } from './workspace/Centre.tsx';
import { DropSign } from './workspace/DropSign.tsx';
import { StatusLine } from './workspace/StatusLine.tsx';
import { Workspace } from './workspace/Workspace.tsx';

/** The start page, or the workspace of the open vehicle; what floats over either; the status line under both. */
export function App() {
  const program = useProgram();
  const open = useStore(program.record, (state) => recordOf(state) !== null);
  const begun = useStore(program.shelf, (shelf) => shelf.begun);
  const reading = useStore(program.captures, (captures) => captures.jobs.length > 0);
  const beginning = useStore(program.captures, (captures) => captures.beginning);
  return (
    <div className="program">
      {open ? <Workspace /> : beginning !== null ? <Centre /> : (begun || reading) && <StartPage />}
      <StatusLine />
      <DropSign />
      <Dialogs />
    </div>
  );
}
