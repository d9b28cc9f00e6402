import { useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { Stretch } from '../../core/windows/window.ts';
import { TraceStack } from '../plot/TraceStack.tsx';
import type { PaneLayout } from '../plot/traceStackProps.ts';
import { useProgram } from '../program/programContext.ts';
import type { Beginning } from '../state/captureStore.ts';
import { themeOf } from '../state/settingsStore.ts';
import { durationWords } from '../words/times.ts';
import { firstPanes } from './firstPanes.ts';

const nothing = (): void => undefined;

/** The first rows of a file that is still being read: to look at and to zoom into, with nothing to mark yet. */
export function BeginningTraces({ beginning }: { readonly beginning: Beginning }) {
  return <Rows key={beginning.outline.key} beginning={beginning} />;
}

function Rows({ beginning }: { readonly beginning: Beginning }) {
  const program = useProgram();
  const overlay = useStore(program.workspace, (state) => state.overlay);
  const settings = useStore(program.settings);
  const { outline, source } = beginning;
  const whole = { startS: 0, endS: outline.durationS };
  const [visible, setVisible] = useState<Stretch>(whole);
  const [cursorS, setCursorS] = useState<number | null>(null);
  const [panes, setPanes] = useState<readonly PaneLayout[]>(() => firstPanes(outline, overlay));
  const { temperatureUnit, speedUnit, showGuides, wheel } = settings.settings;
  const units = useMemo(() => ({ temperature: temperatureUnit, speed: speedUnit }), [temperatureUnit, speedUnit]);
  return (
    <>
      <p className="beginningWords soft">
        The first {durationWords(outline.durationS)} of {outline.name}. The rest is being read.
      </p>
      <TraceStack
        capture={outline}
        source={source}
        panes={panes}
        visible={visible}
        windows={[]}
        notes={[]}
        ghosts={[]}
        selectedWindowId={null}
        cursorS={cursorS}
        secondCursorS={null}
        tool="pan"
        guides={showGuides}
        wheel={wheel}
        theme={themeOf(settings)}
        units={units}
        onVisible={setVisible}
        onCursor={setCursorS}
        onSecondCursor={nothing}
        onMark={nothing}
        onSelectWindow={nothing}
        onAcceptOffer={nothing}
        onWindowDrag={nothing}
        onNoteAt={nothing}
        onSelectNote={nothing}
        onPaneShares={(shares) => setPanes(panes.map((pane) => ({ ...pane, share: shares[pane.id] ?? pane.share })))}
        onPaneChange={(pane) => setPanes(panes.map((one) => (one.id === pane.id ? pane : one)))}
        onCommand={(id) => id === 'view.whole' && setVisible(whole)}
      />
    </>
  );
}
