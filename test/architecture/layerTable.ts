// THE table of the house: which folder is for what, and what it may import. Lower rows stand on higher ones. A folder that
// is not here fails the test: give it a row, with its purpose in one line, and as few rights as it can live with.

export interface Layer {
  /** A folder with all below it, a single file, or 'folder/*' for the files right in it. The longest match counts. */
  readonly folder: string;
  readonly purpose: string;
  /** Folders of which it may import anything; its own and those below it are always allowed. */
  readonly may: readonly string[];
  /** Folders of which it may import types besides. Nothing of them is left when the program runs. */
  readonly types?: readonly string[];
  /** Packages it may import; 'node' is all of Node's own modules. */
  readonly packages?: readonly string[];
}

const GROUND = ['core/registry.ts', 'core/units', 'core/words', 'core/statistics', 'core/capture', 'core/signal'];
const JUDGING = [...GROUND, 'core/diagnostics', 'core/model', 'core/windows', 'core/measures'];
const BELOW_SCORING = [
  ...JUDGING,
  'core/conditions',
  'core/thermal',
  'core/findings',
  'core/compare',
  'core/reading',
  'core/record',
];
const WHOLE_CORE = ['core'];
const SHELL = ['electron', 'node', 'zod', 'yauzl'];
const PAGE = ['react', 'react-dom', 'zustand', 'lucide-react', 'zod'];

export const LAYERS: readonly Layer[] = [
  // core: bytes become channels, channels become measures, measures become findings, findings become evidence
  { folder: 'core/noNodeTypes', purpose: 'an empty stand-in that keeps the types of Node out of core', may: [] },
  { folder: 'core/registry.ts', purpose: 'a list of members that refuses two of the same id', may: [] },
  { folder: 'core/version.ts', purpose: 'the version of the core that made a number', may: [] },
  { folder: 'core/units', purpose: 'quantities as types, and the table of unit spellings', may: [] },
  { folder: 'core/words', purpose: 'numbers and times as people read them', may: ['core/units'] },
  { folder: 'core/statistics', purpose: 'distributions, intervals and tests', may: ['core/units'] },
  { folder: 'core/capture', purpose: 'what a capture is: channels, roles, time bases, views', may: ['core/units'] },
  {
    folder: 'core/signal',
    purpose: 'one signal kernel a file',
    may: ['core/units', 'core/capture', 'core/statistics'],
  },
  {
    folder: 'core/diagnostics',
    purpose: 'the answers of the diagnostic connector, decoded by the published formulas',
    may: ['core/units', 'core/capture'],
  },
  { folder: 'core/model', purpose: 'what a converter stores: the model and its fit', may: [...GROUND, 'core/windows'] },
  {
    folder: 'core/windows',
    purpose: 'stretches of a capture that can be judged, and offers of such',
    may: GROUND,
  },
  {
    folder: 'core/reading',
    purpose: 'bytes to a capture, with warnings: layouts, time forms, roles of columns',
    may: [...GROUND, 'core/diagnostics'],
    types: ['core/record'],
    packages: ['papaparse', 'fflate', 'zod'],
  },
  {
    folder: 'core/measures',
    purpose: 'a number over a window with its uncertainty, or why there is none',
    may: [...GROUND, 'core/diagnostics', 'core/model', 'core/windows'],
  },
  {
    folder: 'core/conditions',
    purpose: 'what a window must meet to be judged',
    may: JUDGING,
  },
  {
    folder: 'core/thermal',
    purpose: 'surface temperatures at inlet and outlet, and what they can bear',
    may: [...GROUND, 'core/windows'],
    types: ['core/record'],
  },
  {
    folder: 'core/findings',
    purpose: 'measures, conditions, readings and codes to a finding with its reasons, blockers and next test',
    may: [...JUDGING, 'core/conditions', 'core/thermal'],
    types: ['core/record'],
  },
  {
    folder: 'core/compare',
    purpose: 'a window of one capture over a window of another',
    may: [...JUDGING, 'core/conditions', 'core/findings'],
  },
  {
    folder: 'core/record',
    purpose: 'the vehicle record: schema, edits, history, migrations, canonical form',
    may: [...GROUND, 'core/windows', 'core/reading', 'core/findings'],
    types: ['core/measures'],
    packages: ['zod', 'canonicalize'],
  },
  {
    folder: 'core/opinions',
    purpose: 'what readers sign: the chain and its check, two opinions side by side, words for how sure one is',
    may: ['core/units', 'core/capture', 'core/windows', 'core/findings', 'core/record'],
  },
  {
    folder: 'core/evidence',
    purpose: 'the record and its scores to the sheet that is handed over, and its formats',
    may: [
      'core/version.ts',
      ...JUDGING,
      'core/conditions',
      'core/thermal',
      'core/findings',
      'core/compare',
      'core/record',
      'core/opinions',
      'core/reading',
    ],
    packages: ['fflate', 'zod', 'canonicalize'],
  },
  {
    folder: 'core/contract',
    purpose: 'the JSON of the headless command, with its schema',
    may: ['core/version.ts', ...JUDGING, 'core/conditions', 'core/thermal', 'core/findings', 'core/reading'],
    packages: ['zod'],
  },
  {
    folder: 'core/bridge',
    purpose: 'what window, shell and core process say to each other: names and schemas',
    may: ['core/record', 'core/reading', 'core/units'],
    types: WHOLE_CORE,
    packages: ['zod'],
  },
  {
    folder: 'core/simulation',
    purpose: 'invented engines, converters, sensors and instruments, and the sample drives made with them',
    may: [...GROUND, 'core/model', 'core/diagnostics'],
    types: ['core/record'],
  },
  {
    folder: 'core/simulation/evaluation',
    purpose: 'scores a simulated population and counts what was right',
    may: ['core/*', ...BELOW_SCORING, 'core/simulation'],
  },
  {
    folder: 'core/service',
    purpose: 'holds open captures and answers the questions of core/bridge',
    may: ['core/*', ...BELOW_SCORING, 'core/bridge'],
  },
  {
    folder: 'core/*',
    purpose: 'the whole idea on one page: bytes to verdict',
    may: BELOW_SCORING,
  },

  // main: feeds the core, keeps what it says
  {
    folder: 'main/setup',
    purpose: 'set-up, build, checks, packaging, and what makes kept files anew',
    may: ['core/simulation', 'core/findings'],
    packages: ['node', 'electron', 'esbuild', 'electron-builder', '@electron/fuses', 'playwright'],
  },
  {
    folder: 'main/store',
    purpose: 'the vehicle store: atomic saves and what stands behind them',
    may: WHOLE_CORE,
    packages: ['node', 'zod'],
  },
  // These serve the headless command too, so they know no Electron.
  { folder: 'main/captures/freeMemory.ts', purpose: 'how much memory a capture may take', may: [], packages: ['node'] },
  {
    folder: 'main/captures/openRegularFile.ts',
    purpose: 'opens a regular file and nothing else',
    may: ['core', 'main/store'],
    packages: ['node'],
  },
  {
    folder: 'main/coreProcess/hasher.ts',
    purpose: 'the hash of bytes that come one after another',
    may: [],
    packages: ['node'],
  },
  {
    folder: 'main/coreProcess/fileBytes.ts',
    purpose: 'the bytes of a file, hashed as they are read',
    may: ['core', 'main/store', 'main/captures/openRegularFile.ts', 'main/coreProcess/hasher.ts'],
    packages: ['node'],
  },
  {
    folder: 'main/bundles',
    purpose: 'bundles for a second reader: packed, checked, their captures kept, in a thread of their own',
    may: [...WHOLE_CORE, 'main/store', 'main/captures/openRegularFile.ts'],
    packages: ['node'],
  },
  {
    folder: 'main/command',
    purpose: 'the headless command, in plain Node',
    may: [
      ...WHOLE_CORE,
      'main/store',
      'main/bundles',
      'main/captures/freeMemory.ts',
      'main/captures/openRegularFile.ts',
      'main/coreProcess/fileBytes.ts',
    ],
    packages: ['node', 'zod'],
  },
  ...[
    ['main/program', 'one instance, arguments, folders, settings'],
    ['main/window', 'the window and its remembered place'],
    ['main/messages', 'what the window asks: sender and schema checked, then a handler'],
    ['main/captures', 'picked files behind tokens; the window never sees a path'],
    ['main/coreProcess', 'the process that holds captures and runs the core'],
    ['main/exports', 'files that are handed out'],
    ['main/print', 'sheets on paper and as PDF'],
    ['main/menu', 'the menu bar, made from the list of commands'],
    ['main/safety', 'navigation, permissions, content policy, the private scheme'],
  ].map(([folder = '', purpose = '']) => ({ folder, purpose, may: ['main', ...WHOLE_CORE], packages: SHELL })),
  { folder: 'main', purpose: 'the shell: starts and ends the program', may: WHOLE_CORE, packages: SHELL },

  // renderer: shows it
  { folder: 'renderer/style', purpose: 'colours and lines of paper, by theme', may: WHOLE_CORE },
  { folder: 'renderer/words', purpose: 'words, numbers and times on the screen', may: WHOLE_CORE },
  { folder: 'renderer/shell', purpose: 'typed access to what the preload offers', may: WHOLE_CORE },
  {
    folder: 'renderer/worker',
    purpose: 'questions to the core process: one port, progress, cancel',
    may: WHOLE_CORE,
    types: ['renderer/plot'],
  },
  {
    folder: 'renderer/program',
    purpose: 'what every panel shares: stores, clock, shell and core, handed down as one context',
    may: ['renderer', ...WHOLE_CORE],
    packages: PAGE,
  },
  {
    folder: 'renderer/widgets',
    purpose: 'buttons, fields, dialogs: know nothing of captures',
    may: [...WHOLE_CORE, 'renderer/words', 'renderer/style', 'renderer/program'],
    packages: PAGE,
  },
  { folder: 'renderer/plot/valueTicks.ts', purpose: 'round numbers along an axis', may: WHOLE_CORE },
  {
    folder: 'renderer/panes',
    purpose: 'kinds of panes: roles, names, guides, scales',
    may: [...WHOLE_CORE, 'renderer/words', 'renderer/style', 'renderer/plot/valueTicks.ts'],
  },
  {
    folder: 'renderer/plot',
    purpose: 'stacked traces on one time axis; given props, says back what the hand did',
    may: [...WHOLE_CORE, 'renderer/words', 'renderer/style', 'renderer/widgets', 'renderer/panes'],
    packages: [...PAGE, 'uplot'],
  },
  ...[
    ['renderer/state', 'stores: record, captures, scores, workspace, settings, notices'],
    ['renderer/actions', 'what the person can do, over several stores'],
    ['renderer/commands', 'what each command of core/bridge/commandList.ts does'],
    ['renderer/workspace', 'the page: margins, traces, strip'],
    ['renderer/vehicle', 'the vehicle margin: captures, windows, readings, notes'],
    ['renderer/compare', 'a window of one capture over a window of another'],
    ['renderer/finding', 'the finding margin: verdict, conditions, measures, reasons, next test'],
    ['renderer/dialogs', 'what is asked on a sheet of its own'],
    ['renderer/start', 'the page before the first capture'],
  ].map(([folder = '', purpose = '']) => ({ folder, purpose, may: ['renderer', ...WHOLE_CORE], packages: PAGE })),
  {
    folder: 'renderer',
    purpose: 'the window: starts the page',
    may: WHOLE_CORE,
    packages: [...PAGE, 'uplot', '@fontsource/atkinson-hyperlegible-next', '@fontsource/atkinson-hyperlegible-mono'],
  },

  // test: sees all
  {
    folder: 'test',
    purpose: 'unit, property, reference, end-to-end, fault and benchmark suites',
    may: ['core', 'main', 'renderer'],
    packages: ['*'],
  },
];

/** Exceptions, each with its reason. The list may only shrink. */
export const EXCEPTIONS: readonly { readonly file: string; readonly imports: string; readonly reason: string }[] = [];
