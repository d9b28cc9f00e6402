import { expect, it } from 'vitest';
import { openPicked } from '../../../../renderer/actions/openCaptures.ts';
import { refreshShelf } from '../../../../renderer/actions/refreshShelf.ts';
import { beginVehicle, chooseVehicle, deleteVehicle, goToStart } from '../../../../renderer/actions/vehicles.ts';
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

it('a damaged vehicle that is chosen from the list says what can be done, and what is open stays open', async () => {
  const window = await startWindow();
  const { program } = window;
  await openPicked(program, [window.file('bay-3.csv', 'Time (s),O2S B1S1 (V)\n0,0.1\n1,0.8\n2,0.1\n')]);
  await window.quiet();
  await refreshShelf(program);
  const damaged = {
    id: 'lostRecord',
    what: 'Damaged.',
    where: '~/x/record.json',
    doNext: 'Put it back from a backup.',
  };
  const [entry] = program.shelf.getState().vehicles;
  if (entry === undefined) throw new Error('nothing is kept');
  program.shelf.setState({ vehicles: [entry, { ...entry, id: 'other', name: 'Van 9', damaged }] });
  await chooseVehicle(program, 'other');
  expect(recordOf(program.record.getState())?.identity.name).toBe('bay-3');
  const told = { ...damaged, where: 'Van 9, ~/x/record.json' };
  expect(program.notices.getState().problems).toMatchObject([{ place: 'vehicle', problem: told }]);
  await beginVehicle(program);
  await window.quiet();
  expect(program.notices.getState().problems).toEqual([]); // it was not said of the new one
});
