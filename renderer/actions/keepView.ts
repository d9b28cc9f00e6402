import type { Program } from '../program/program.ts';
import { recordOf } from '../state/recordStore.ts';
import { viewStateOf } from '../state/workspaceStore.ts';

/** A view that rests this long is kept. */
const KEEP_AFTER_MS = 800;

/** Keeps the open vehicle's view, now. */
export async function saveView({ shell, record, workspace }: Program): Promise<void> {
  const open = recordOf(record.getState());
  if (open === null) return;
  await shell.saveView({ id: open.id, view: { ...viewStateOf(workspace.getState()) } });
}

/** Keeps the view by itself whenever it has rested for a moment. The returned function stops it. */
export function keepView(program: Program): () => void {
  let callOff: (() => void) | null = null;
  return program.workspace.subscribe(() => {
    callOff?.();
    callOff = program.clock.after(KEEP_AFTER_MS, () => void saveView(program));
  });
}
