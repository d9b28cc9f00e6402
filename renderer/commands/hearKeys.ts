import type { Program } from '../program/program.ts';
import { commandOfKey } from './keyMap.ts';
import { runCommand } from './runCommand.ts';

/** Commands that also run while a dialog is open. */
const OVER_DIALOGS = new Set(['edit.undo', 'edit.redo', 'file.save', 'view.fullScreen']);

const PANES = '.traceStack, .compareStack, .overview';
const TEXT = 'input:not([type=checkbox]):not([type=radio]):not([type=range]), textarea, select, [contenteditable]';

/** Lets keys run commands. A key that a pane or a control has taken already is left alone. */
export function hearKeys(program: Program, page: Window): () => void {
  const hear = (event: KeyboardEvent): void => {
    if (event.defaultPrevented || event.isComposing) return;
    const target = event.target instanceof Element ? event.target : null;
    const id = commandOfKey(event, {
      inPane: target?.closest(PANES) != null,
      inText: target?.closest(TEXT) != null,
      singleKeys: program.settings.getState().settings.singleKeys,
      mac: program.shell.platform === 'darwin',
    });
    if (id === null) return;
    if (program.dialogs.getState().dialog !== null && !OVER_DIALOGS.has(id)) return;
    event.preventDefault();
    runCommand(program, id);
  };
  page.addEventListener('keydown', hear);
  return () => page.removeEventListener('keydown', hear);
}
