// Two commands that begin together, and what one that was ended leaves.

import { existsSync, mkdtempSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { runToEnd } from '../../../../main/setup/child.mjs';
import { inTurn } from '../../../../main/setup/turns.mjs';

const freshPlace = () => join(mkdtempSync(join(tmpdir(), 'tailtrace-turns-')), 'cache', 'installing');
const quickly = (place: string) => ({ place, lookEveryMs: 1 });

afterEach(() => vi.restoreAllMocks());

describe('installing', () => {
  test('is done one after the other, and the one that waits says so once', async () => {
    const said: string[] = [];
    vi.spyOn(process.stderr, 'write').mockImplementation((words) => {
      said.push(String(words));
      return true;
    });
    const place = freshPlace();
    const order: string[] = [];
    let finish = (): void => undefined;
    const first = inTurn(async () => {
      order.push('first begins');
      await new Promise<void>((resolve) => {
        finish = resolve;
      });
      order.push('first ends');
    }, quickly(place));
    await vi.waitFor(() => expect(order).toEqual(['first begins']));
    const second = inTurn(async () => order.push('second'), quickly(place));
    await vi.waitFor(() => expect(said).toHaveLength(1));
    finish();
    await Promise.all([first, second]);
    expect(order).toEqual(['first begins', 'first ends', 'second']);
    expect(said).toEqual(['Another command is installing what this one needs. Waiting for it.\n']);
    expect(existsSync(place)).toBe(false);
  });

  test('that fails lets the next one in', async () => {
    const place = freshPlace();
    await expect(inTurn(() => Promise.reject(new Error('no network')), quickly(place))).rejects.toThrow('no network');
    expect(await inTurn(async () => 'done', quickly(place))).toBe('done');
  });

  test('goes on over the sign of a command that is no more', async () => {
    const place = freshPlace();
    await inTurn(async () => undefined, quickly(place));
    const gone = await runToEnd(process.execPath, ['-e', 'console.log(process.pid)']);
    writeFileSync(place, gone.output.trim());
    const mine = await inTurn(async () => readFileSync(place, 'utf8'), quickly(place));
    expect(mine).toBe(String(process.pid));
  });

  test('goes on over a sign that is older than any installation, whoever has its number now', async () => {
    const place = freshPlace();
    await inTurn(async () => undefined, quickly(place));
    writeFileSync(place, String(process.pid));
    const yesterday = Date.now() / 1000 - 24 * 3600;
    utimesSync(place, yesterday, yesterday);
    expect(await inTurn(async () => 'done', quickly(place))).toBe('done');
  });
});
