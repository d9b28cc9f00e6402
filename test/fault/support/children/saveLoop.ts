// Saves the van of a folder again and again with rising numbers, until it is killed. Tells every step of every save at
// once ("." before each operation on a file), so that its parent can kill it in the middle of one, and every number that
// the store acknowledged. Usage: FOLDER

import { writeSync } from 'node:fs';
import { type FileLayer, systemFiles } from '../../../../main/store/fileLayer.ts';
import { VehicleStore } from '../../../../main/store/vehicleStore.ts';
import { numberOf, vanFourteen } from '../vanFourteen.ts';

const [, , folder = ''] = process.argv;

/** Tells that an operation begins, then carries it out. */
const telling =
  <Args extends readonly unknown[], R>(operation: (...args: Args) => R) =>
  (...args: Args): R => {
    writeSync(1, '.');
    return operation(...args);
  };

const files: FileLayer = {
  ...systemFiles,
  create: telling(async (path, mode) => {
    const file = await systemFiles.create(path, mode);
    return { write: telling(file.write), sync: telling(file.sync), close: telling(file.close) };
  }),
  rename: telling(systemFiles.rename),
  link: telling(systemFiles.link),
  remove: telling(systemFiles.remove),
  syncFolder: telling(systemFiles.syncFolder),
};

const store = new VehicleStore({ folder, files, nowMs: () => Date.now() });
await store.start();
const loaded = await store.load('van-14');
for (let number = loaded.ok ? numberOf(loaded.record) + 1 : 1; ; number++) {
  const saved = await store.save(vanFourteen(number));
  if (!saved.saved) throw new Error(`${saved.problem.what} ${saved.problem.doNext}`);
  writeSync(1, `${number}\n`);
}
