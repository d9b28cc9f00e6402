import { execFileSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openRegularFile, readProblem } from '../../../../main/captures/openRegularFile.ts';

let folder = '';
const at = (name: string) => join(folder, name);
const socket = createServer();

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'tailtrace-kinds-'));
  writeFileSync(at('plain.csv'), 'time,rpm\n0,800\n');
  mkdirSync(at('folder.csv'));
  symlinkSync(at('plain.csv'), at('link.csv'));
  symlinkSync(at('loop-b'), at('loop-a'));
  symlinkSync(at('loop-a'), at('loop-b'));
  symlinkSync(at('nowhere'), at('dangling'));
  execFileSync('mkfifo', [at('pipe')]);
  await new Promise<void>((listening) => socket.listen(at('socket'), listening));
});
afterAll(() => {
  socket.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('T-OPEN-6: only regular files are opened', () => {
  it.each(['plain.csv', 'link.csv'])('%s opens, with its size', async (name) => {
    const opened = await openRegularFile(at(name), name);
    expect(opened).toMatchObject({ ok: true, value: { bytes: 15 } });
    if (opened.ok) await opened.value.handle.close();
  });

  it.each([
    ['folder.csv', 'notRead.EISDIR'],
    ['loop-a', 'notRead.ELOOP'],
    ['dangling', 'notRead.ENOENT'],
    ['missing.csv', 'notRead.ENOENT'],
    ['plain.csv/inside', 'notRead.ENOTDIR'],
    ['pipe', 'notRead.ENXIO'],
    ['socket', 'notRead.ENXIO'],
    ['/dev/zero', 'notRead.ENXIO'],
    ['/dev/tty', 'notRead.ENXIO'],
    ['x'.repeat(300), 'notRead.ENAMETOOLONG'],
  ])('%s is one sentence, at once', async (name, id) => {
    const path = name.startsWith('/') ? name : at(name);
    const opened = await openRegularFile(path, 'as picked');
    expect(opened).toMatchObject({ ok: false, problem: { id, where: 'as picked' } });
  });

  it('one that may not be read says so', () => {
    // Root may read everything, so the system's answer is given here instead of a file without rights.
    chmodSync(at('plain.csv'), 0o644);
    expect(readProblem({ code: 'EACCES' }, 'a.csv')).toMatchObject({
      what: 'You may not read this file.',
      where: 'a.csv',
    });
  });

  it.each(['ENOENT', 'EACCES', 'EISDIR', 'EIO', 'ENXIO', 'EMFILE', 'ELOOP', 'ESOMETHING', ''])(
    '%s: what, where and what to do, in short sentences without a code',
    (code) => {
      const { what, where, doNext } = readProblem({ code }, 'van.csv');
      expect(where).toBe('van.csv');
      for (const sentence of [what, doNext]) {
        expect(sentence).toMatch(/^[A-Z][^.]*\.$/);
        expect(sentence.split(' ').length).toBeLessThanOrEqual(20);
        expect(sentence).not.toMatch(/[Ee]rror|[Ii]nvalid|undefined|null|E[A-Z]{3,}/);
      }
    },
  );
});
