import { useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import { useProgram } from '../program/programContext.ts';
import { readsBlind, recordOf } from '../state/recordStore.ts';
import { windowScoresOf } from '../state/scoreStore.ts';
import { type Tab, Tabs } from '../widgets/Tabs.tsx';
import { CaptureFacts } from './CaptureFacts.tsx';
import { OfferReport } from './OfferReport.tsx';
import { VehicleReport } from './VehicleReport.tsx';
import { WindowReport } from './WindowReport.tsx';

type Report = 'window' | 'vehicle' | 'capture';

const TABS: readonly Tab<Report>[] = [
  { id: 'window', words: 'Window' },
  { id: 'vehicle', words: 'Vehicle' },
  { id: 'capture', words: 'Capture' },
];

/** The laboratory sheet: the finding of the selected window, of the vehicle, or what was found in the capture. */
export function FindingMargin() {
  const { workspace } = useProgram();
  const report = useStore(workspace, (state) => state.report);
  const selected = useStore(workspace, (state) => state.selected?.id);
  const sheet = useRef<HTMLElement>(null);
  const shows = `${report} ${selected ?? ''}`;
  // What is newly shown is read from its beginning.
  useEffect(() => {
    if (sheet.current === null) return;
    sheet.current.dataset.shows = shows;
    sheet.current.scrollTo(0, 0);
  }, [shows]);
  return (
    <aside ref={sheet} className="margin right" aria-label="Finding">
      <Tabs
        label="What is reported"
        tabs={TABS}
        chosen={report}
        onChoose={(id) => workspace.getState().set({ report: id })}
      >
        {report === 'window' && <OfWindow />}
        {report === 'vehicle' && <VehicleReport />}
        {report === 'capture' && <CaptureFacts />}
      </Tabs>
    </aside>
  );
}

function OfWindow() {
  const program = useProgram();
  const offered = useStore(program.workspace, ({ selected }) => selected?.kind === 'offer');
  const windowId = useStore(program.workspace, (state) => state.windowId);
  const window = useStore(program.record, (state) => recordOf(state)?.windows[windowId ?? '']);
  const score = useStore(program.score, (state) => state.score);
  const blind = useStore(program.record, readsBlind);
  if (offered) return <OfferReport />;
  if (window === undefined) {
    return (
      <div className="report">
        <h2>No window is selected</h2>
        <p className="soft">
          A window is a stretch that is judged. {blind ? 'Drag' : 'Accept an offer of the program, or drag'} over the
          traces to mark one.
        </p>
      </div>
    );
  }
  return <WindowReport window={window} scores={windowScoresOf(score, window.id)} />;
}
