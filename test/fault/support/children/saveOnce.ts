// Loads the van of a folder and saves it once with another number; prints what the store said. Usage: FOLDER NUMBER

import { systemFiles } from '../../../../main/store/fileLayer.ts';
import { VehicleStore } from '../../../../main/store/vehicleStore.ts';
import { vanFourteen } from '../vanFourteen.ts';

const [, , folder = '', number = ''] = process.argv;
const store = new VehicleStore({ folder, files: systemFiles, nowMs: () => Date.now() });
await store.load('van-14');
process.stdout.write(JSON.stringify(await store.save(vanFourteen(Number(number)))));
