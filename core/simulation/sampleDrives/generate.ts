import { analogueHoldText } from './analogueHold.ts';
import { carTwoBanksText } from './carTwoBanks.ts';
import { roadDriveText } from './roadDrive.ts';
import { vanAfterText, vanBeforeText } from './vanBeforeAfter.ts';
import { vanTrapText } from './vanTrap.ts';
import { vanTwinText } from './vanTwin.ts';

/** File in assets/drives, and the function that makes its text. Pure: the same text on every machine. */
export const DRIVE_TEXTS: ReadonlyMap<string, () => string> = new Map([
  ['van-before.csv', vanBeforeText],
  ['van-after.csv', vanAfterText],
  ['van-twin.csv', vanTwinText],
  ['car-two-banks.txt', carTwoBanksText],
  ['van-trap.tsv', vanTrapText],
  ['road-drive.csv', roadDriveText],
  ['analogue-hold.csv', analogueHoldText],
]);
