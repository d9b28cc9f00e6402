import { useMemo } from 'react';
import { useStore } from 'zustand';
import { locateCapture } from '../actions/findCaptures.ts';
import { CommandButton } from '../commands/CommandButton.tsx';
import { ComparePage } from '../compare/ComparePage.tsx';
import { BeginningStrip } from '../plot/BeginningStrip.tsx';
import { useProgram } from '../program/programContext.ts';
import type { Beginning, MissingCapture } from '../state/captureStore.ts';
import { recordOf } from '../state/recordStore.ts';
import { themeOf } from '../state/settingsStore.ts';
import { Button } from '../widgets/Button.tsx';
import { BeginningTraces } from './BeginningTraces.tsx';
import { firstPanes } from './firstPanes.ts';
import { OpeningJobs } from './OpeningJobs.tsx';
import { ToolRow } from './ToolRow.tsx';
import { Traces } from './Traces.tsx';
import { ValuesTable } from './ValuesTable.tsx';

/** The page: the traces of the shown capture, or two windows over each other. */
export function Centre() {
  const program = useProgram();
  const captureId = useStore(program.workspace, (state) => state.captureId);
  const compare = useStore(program.workspace, (state) => state.compare);
  const table = useStore(program.workspace, (state) => state.table);
  const held = useStore(program.captures, (captures) => (captureId === null ? null : captures.held[captureId]));
  const beginning = useStore(program.captures, (captures) => captures.beginning);
  const empty = compare === null && held == null;
  return (
    <main className="centre" tabIndex={-1}>
      <OpeningJobs />
      {beginning !== null && !empty && <SmallBeginning beginning={beginning} />}
      {compare !== null && <ComparePage compare={compare} />}
      {compare === null && held != null && (
        <>
          <ToolRow />
          <Traces held={held} />
          {table && <ValuesTable held={held} />}
        </>
      )}
      {empty && beginning !== null && <BeginningTraces beginning={beginning} />}
      {empty && beginning === null && <NothingShown captureId={captureId} />}
    </main>
  );
}

/** What is shown stays, to work on; what is being read has a strip above it. */
function SmallBeginning({ beginning: { outline, source } }: { readonly beginning: Beginning }) {
  const theme = useStore(useProgram().settings, themeOf);
  const channelIds = useMemo(() => firstPanes(outline, false)[0]?.channelIds ?? [], [outline]);
  return <BeginningStrip key={outline.key} capture={outline} source={source} channelIds={channelIds} theme={theme} />;
}

const MISSING: Readonly<Record<MissingCapture['why'], { readonly title: string; readonly words: string }>> = {
  notFound: { title: 'The file was not found', words: 'is not where it was.' },
  changed: { title: 'The file is no longer the one that was recorded', words: 'was changed since.' },
  unread: { title: 'The file could not be read', words: 'is there, but was not read to its end.' },
};

/** What will be here, and the one thing to do next. */
function NothingShown({ captureId }: { readonly captureId: string | null }) {
  const program = useProgram();
  const capture = useStore(program.record, (state) => recordOf(state)?.captures[captureId ?? '']);
  const missing = useStore(program.captures, (captures) => captures.missing[captureId ?? '']);
  if (capture !== undefined && missing !== undefined) {
    return (
      <div className="nothingShown">
        <h2>{MISSING[missing.why].title}</h2>
        <p>
          {capture.name} {MISSING[missing.why].words} Windows, notes and findings are kept. Say where the original is;
          it is taken only if its hash is the same.
        </p>
        <Button look="main" onPress={() => void locateCapture(program, capture.id)}>
          Say where it is
        </Button>
      </div>
    );
  }
  if (capture !== undefined) return <div className="nothingShown" />;
  return (
    <div className="nothingShown">
      <h2>Traces will be here</h2>
      <p>
        Open a capture as the instrument wrote it, or drop it anywhere on this window. It is only read, never changed.
      </p>
      <CommandButton id="file.open" look="main" words="Open capture" />
    </div>
  );
}
