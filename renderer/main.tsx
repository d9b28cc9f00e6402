import './style/fonts.css';
import './style/tokens.css';
import './style/base.css';
import './style/controls.css';
import './style/dialog.css';
import './style/start.css';
import './style/workspace.css';
import './style/margins.css';
import './style/report.css';
import './style/narrow.css';
import { createRoot } from 'react-dom/client';
import { z } from 'zod';
import { App } from './App.tsx';
import { hearKeys } from './commands/hearKeys.ts';
import { systemClock } from './program/clock.ts';
import { drawFault } from './program/drawFault.ts';
import { followTheme } from './program/followTheme.ts';
import { hearFaults } from './program/hearFaults.ts';
import { createProgram } from './program/program.ts';
import { ProgramProvider } from './program/programContext.ts';
import { startProgram } from './program/startProgram.ts';
import { watchSettled } from './program/watchSettled.ts';
import { shellOf } from './shell/shell.ts';
import { createCoreClient } from './worker/coreClient.ts';
import { onCorePort } from './worker/corePort.ts';

// The page's policy forbids making code from text; without this zod would try it once and be refused.
z.config({ jitless: true });

const core = createCoreClient();
onCorePort(window, (port) => core.connect(port));

const program = createProgram({
  shell: shellOf(window),
  core,
  clock: systemClock,
  newId: () => crypto.randomUUID(),
});

hearFaults(program, window);
followTheme(program, window);
hearKeys(program, window);
const started = startProgram(program);
watchSettled(program, document, started);

const page = document.getElementById('page');
if (page === null) throw new Error('index.html has no element with the id "page".');
createRoot(page, {
  onUncaughtError: (fault) => {
    drawFault(page);
    reportError(fault);
  },
}).render(
  <ProgramProvider value={program}>
    <App />
  </ProgramProvider>,
);
