import { expect, it } from 'vitest';
import { openPicked } from '../../../../renderer/actions/openCaptures.ts';
import { deleteVehicle, goToStart } from '../../../../renderer/actions/vehicles.ts';
import { recordOf } from '../../../../renderer/state/recordStore.ts';
import { startWindow } from '../../../support/windowProgram.ts';

it('the start page lists the vehicle that was just put away from its first moment on', async () => {
  const window = await startWindow();
  const { program } = window;
  await openPicked(program, [window.file('bay-3.csv', 'Time (s),O2S B1S1 (V)\n0,0.1\n1,0.8\n2,0.1\n')]);
  const listed: string[][] = [];
  program.record.subscribe((state) => {
    if (recordOf(state) === null) listed.push(program.shelf.getState().vehicles.map(({ name }) => name));
  });
  await goToStart(program);
  expect(recordOf(program.record.getState())).toBeNull();
  expect(listed[0]).toEqual(['bay-3']);
  expect(program.notices.getState().words).toBe(''); // "bay-3.csv is open." would no longer be so
});

it('a vehicle that is deleted is gone from the list, and the start page says so', async () => {
  const window = await startWindow();
  const { program } = window;
  await openPicked(program, [window.file('bay-3.csv', 'Time (s),O2S B1S1 (V)\n0,0.1\n1,0.8\n2,0.1\n')]);
  await window.quiet();
  await deleteVehicle(program);
  await window.quiet();
  expect(recordOf(program.record.getState())).toBeNull();
  expect(program.shelf.getState().vehicles).toEqual([]);
  expect(program.captures.getState().held).toEqual({});
  expect(program.notices.getState().words).toBe('bay-3 was deleted.');
});

it('a vehicle that cannot be deleted stays in the list, and why is told', async () => {
  const window = await startWindow();
  const { program } = window;
  await openPicked(program, [window.file('bay-3.csv', 'Time (s),O2S B1S1 (V)\n0,0.1\n1,0.8\n2,0.1\n')]);
  await window.quiet();
  const problem = { id: 'notWritten.EROFS', what: 'The disk can only be read.', where: 'x', doNext: 'Unlock it.' };
  await deleteVehicle({ ...program, shell: { ...program.shell, deleteVehicle: async () => ({ problem }) } });
  expect(program.shelf.getState().vehicles).toHaveLength(1);
  expect(program.notices.getState().problems).toMatchObject([{ place: 'vehicle', problem }]);
});
