// The trace panes alone, over invented channels: for looking at them, and for tests that drive them in a browser. What is
// shown is chosen in the address: ?theme=dark&banks=2&show=compare

import { useCallback, useMemo, useState } from 'react';
import { createRoot } from 'react-dom/client';
import { Overview } from '../../../renderer/plot/Overview.tsx';
import { whenTracesSettled } from '../../../renderer/plot/settled.ts';
import { TraceStack } from '../../../renderer/plot/TraceStack.tsx';
import type {
  PaneLayout,
  PointerTool,
  ShownNote,
  ShownWindow,
  WindowDrag,
} from '../../../renderer/plot/traceStackProps.ts';
import { inventedDrive } from '../inventedDrive.ts';
import { syntheticCapture, syntheticSource } from '../syntheticSource.ts';
import { CompareGallery } from './CompareGallery.tsx';

const wish = new URLSearchParams(location.search);
const theme = wish.get('theme') === 'dark' ? 'dark' : 'light';
const banks = wish.get('banks') === '2' ? 2 : 1;
const durationS = Number(wish.get('duration') ?? 412.8);
const rateHz = Number(wish.get('rate') ?? 100);
const channels = inventedDrive({ rateHz, durationS, banks, seed: 7 });
const capture = syntheticCapture('invented-drive.csv', channels);
const source = syntheticSource(channels);

/** Everything the panes said, for tests, and a way to wait until all of it is drawn. */
const said: unknown[] = [];
Object.assign(window, { said, settled: whenTracesSettled });

const FIRST_PANES: readonly PaneLayout[] = [
  {
    id: 'oxygen',
    channelIds: banks === 2 ? ['up1', 'down1', 'up2', 'down2'] : ['up1', 'down1'],
    share: 0.46,
    scale: { kind: 'quantity' },
  },
  { id: 'rpm', channelIds: ['rpm'], share: 0.27, scale: { kind: 'quantity' } },
  { id: 'coolant', channelIds: ['coolant'], share: 0.27, scale: { kind: 'quantity' } },
];

const FIRST_WINDOWS: readonly ShownWindow[] = [
  { id: 'w1', name: 'Hold 1', startS: durationS * 0.2, endS: durationS * 0.38, finding: 'storing', offer: false },
  { id: 'w2', name: 'Hold 2', startS: durationS * 0.6, endS: durationS * 0.76, finding: 'notStoring', offer: false },
  { id: 'o1', name: 'Idle', startS: durationS * 0.02, endS: durationS * 0.15, finding: null, offer: true },
  { id: 'o2', name: 'Fuel cut', startS: durationS * 0.8, endS: durationS * 0.86, finding: null, offer: true },
];

const NOTES: readonly ShownNote[] = [
  { id: 'n1', startS: durationS * 0.46, endS: null, words: 'First snap: rear sensor answers' },
  { id: 'n2', startS: durationS * 0.64, endS: durationS * 0.7, words: 'Fan came on' },
];

function Gallery() {
  const [visible, setVisible] = useState({
    startS: Number(wish.get('from') ?? 0),
    endS: Number(wish.get('to') ?? durationS),
  });
  const [panes, setPanes] = useState(FIRST_PANES);
  const [windows, setWindows] = useState(FIRST_WINDOWS);
  const [selected, setSelected] = useState<string | null>('w1');
  const [cursorS, setCursor] = useState<number | null>(null);
  const [secondS, setSecond] = useState<number | null>(null);
  const tell = (...words: readonly unknown[]) => said.push(words);
  const onDrag = useCallback((drag: WindowDrag) => {
    said.push(['windowDrag', drag.phase]);
    if (drag.phase !== 'move') return;
    const { windowId, stretch } = drag;
    setWindows((all) => all.map((one) => (one.id === windowId ? { ...one, ...stretch } : one)));
  }, []);
  const shared = useMemo(
    () => ({
      onSelectWindow: (id: string) => setSelected(id),
      onSelectNote: (id: string) => said.push(['note', id]),
    }),
    [],
  );
  const common = {
    capture,
    source,
    visible,
    windows,
    notes: NOTES,
    selectedWindowId: selected,
    cursorS,
    theme,
  } as const;
  return (
    <>
      <TraceStack
        {...common}
        {...shared}
        panes={panes}
        ghosts={[]}
        secondCursorS={secondS}
        tool={toolOf(wish.get('tool'))}
        guides={wish.get('guides') !== 'no'}
        wheel={wish.get('wheel') === 'pan' ? 'pan' : 'zoom'}
        onVisible={(stretch, step) => {
          setVisible(stretch);
          tell('visible', stretch, step);
        }}
        onCursor={setCursor}
        onSecondCursor={setSecond}
        onMark={(stretch) => tell('mark', stretch)}
        onAcceptOffer={(id) => tell('accept', id)}
        onWindowDrag={onDrag}
        onNoteAt={(startS, endS) => tell('noteAt', startS, endS)}
        onPaneShares={(shares) =>
          setPanes((all) => all.map((pane) => ({ ...pane, share: shares[pane.id] ?? pane.share })))
        }
        onPaneChange={(changed) => setPanes((all) => all.map((pane) => (pane.id === changed.id ? changed : pane)))}
        onPaneOrder={(ids) => setPanes((all) => [...all].sort((a, b) => ids.indexOf(a.id) - ids.indexOf(b.id)))}
        onCommand={(id) => tell('command', id)}
      />
      <Overview
        {...common}
        {...shared}
        channelIds={panes[0]?.channelIds ?? []}
        onVisible={(stretch, step) => {
          setVisible(stretch);
          tell('visible', stretch, step);
        }}
      />
    </>
  );
}

function toolOf(word: string | null): PointerTool {
  return word === 'pan' || word === 'zoom' || word === 'note' ? word : 'mark';
}

document.documentElement.dataset.theme = theme;
const page = document.getElementById('page');
if (page === null) throw new Error('gallery.html has no element with the id "page".');
createRoot(page).render(wish.get('show') === 'compare' ? <CompareGallery theme={theme} /> : <Gallery />);
