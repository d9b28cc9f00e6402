import type { Program } from '../program/program.ts';
import { recordOf } from '../state/recordStore.ts';

/** Vehicle, capture, program; the unsaved mark stands only while a save is pending or has failed. */
export function keepTitle(program: Program): () => void {
  let told = '';
  const tell = (): void => {
    const title = titleOf(program);
    const unsaved = program.record.getState().save !== 'saved';
    const key = `${title} ${unsaved}`;
    if (key === told) return;
    told = key;
    void program.shell.setTitle({ title, unsaved });
  };
  tell();
  const stops = [program.record.subscribe(tell), program.workspace.subscribe(tell)];
  return () => stops.forEach((stop) => void stop());
}

export function titleOf({ record, workspace }: Pick<Program, 'record' | 'workspace'>): string {
  const vehicle = recordOf(record.getState());
  const capture = vehicle?.captures[workspace.getState().captureId ?? ''];
  return [vehicle?.identity.name, capture?.name, 'Tailtrace']
    .filter((part) => part !== undefined)
    .join(' – ')
    .slice(0, 400);
}
