// T-SAVE-1: a program that is killed at any instant loses nothing that was saved. Nightly: KILLS=5000.

import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { TEMPORARY_NAME } from '../../main/store/atomicWrite.ts';
import { systemFiles } from '../../main/store/fileLayer.ts';
import { VehicleStore } from '../../main/store/vehicleStore.ts';
import { bundleChild } from './support/bundleChild.ts';
import { numberOf } from './support/vanFourteen.ts';

const KILLS = Number(process.env.KILLS ?? 200);
/** A save takes about ten operations: the kill falls somewhere within the first five saves. */
const LATEST_OPERATION = 50;

let work = '';
let child = '';
beforeAll(async () => {
  work = mkdtempSync(join(tmpdir(), 'tailtrace-kill-'));
  child = await bundleChild('saveLoop', work);
});
afterAll(() => rmSync(work, { recursive: true, force: true }));

/** Starts the child, kills it as soon as it has told of `operations` operations, and says what it acknowledged last. */
function saveUntilKilled(folder: string, operations: number): Promise<number> {
  const running = spawn(process.execPath, [child, folder], { stdio: ['ignore', 'pipe', 'inherit'] });
  let told = '';
  running.stdout.setEncoding('latin1').on('data', (words: string) => {
    told += words;
    if (told.split('.').length > operations) running.kill('SIGKILL');
  });
  return new Promise((resolve, reject) => {
    running.on('error', reject);
    running.on('close', (_status, signal) => {
      if (signal !== 'SIGKILL') reject(new Error(`the child ended by itself: ${told.slice(-200)}`));
      const acknowledged = told.replaceAll('.', '').split('\n').slice(0, -1);
      resolve(Number(acknowledged.at(-1) ?? 0));
    });
  });
}

interface Toll {
  corrupt: number;
  lost: number;
  litter: number;
}

/** Kills one after the other in one folder; the vehicle is opened after each as the next start would. */
async function lane(folder: string, kills: number, seed: number): Promise<Toll> {
  const toll: Toll = { corrupt: 0, lost: 0, litter: 0 };
  let safe = 0;
  for (let kill = 0; kill < kills; kill++) {
    // Spread evenly over the operations by a step that shares no factor with their number.
    const operations = 1 + ((seed + kill * 19) % LATEST_OPERATION);
    safe = Math.max(safe, await saveUntilKilled(folder, operations));
    const store = new VehicleStore({ folder, files: systemFiles, nowMs: () => Date.now() });
    const loaded = await store.load('van-14');
    const number = loaded.ok ? numberOf(loaded.record) : loaded.problem.id === 'missingRecord' ? 0 : -1;
    if (number < 0) toll.corrupt++;
    else if (number < safe) toll.lost++;
  }
  const names = readdirSync(folder, { recursive: true, withFileTypes: true }).map((entry) => entry.name);
  toll.litter = names.filter((name) => TEMPORARY_NAME.test(name)).length;
  return toll;
}

describe('T-SAVE-1: killed at any instant', () => {
  it(`${KILLS} times: no record is damaged, no acknowledged save is missing`, async () => {
    const half = Math.ceil(KILLS / 2);
    const tolls = await Promise.all([lane(join(work, 'one'), half, 0), lane(join(work, 'two'), KILLS - half, 7)]);
    for (const toll of tolls) {
      expect(toll).toMatchObject({ corrupt: 0, lost: 0 });
      // Kills in the middle of a save do leave temporary files: without any, none of them fell where it hurts.
      expect(toll.litter).toBeGreaterThan(0);
    }
  });
});
