import { expect, it } from 'vitest';
import { openPicked } from '../../../../renderer/actions/openCaptures.ts';
import { goToStart } from '../../../../renderer/actions/vehicles.ts';
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
});
