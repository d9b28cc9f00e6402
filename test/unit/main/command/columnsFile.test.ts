// The columns file of the headless command, with the real reader and the real core, on files of a temporary folder.

import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { afterAll, describe, expect, test } from 'vitest';
import { commandIn, reportsOf, type Said } from '../../../support/scoreCommand.ts';

const folder = mkdtempSync(join(tmpdir(), 'tailtrace-columns-'));
copyFileSync(join(import.meta.dirname, '../../../../assets/drives/van-before.csv'), join(folder, 'van.csv'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = commandIn(folder);

describe('--columns', () => {
  test('names say which column is what, and the choice is used', async () => {
    const rows = Array.from({ length: 600 }, (_, i) => `${i / 10},${0.45 + 0.4 * Math.sin(i)},0.6,2300`);
    writeFileSync(join(folder, 'plain.csv'), ['k,a,b,c', ...rows].join('\n'));
    writeFileSync(
      join(folder, 'columns.json'),
      JSON.stringify({
        columns: [
          { name: 'k', role: 'time' },
          { name: 'A', role: 'upstreamO2', bank: 1, unit: 'V' },
          { index: 2, role: 'downstreamO2', bank: 1, unit: 'V' },
          { name: 'c', role: 'rpm' },
        ],
      }),
    );
    const said = await run(['plain.csv', '--columns', 'columns.json', '--json']);
    expect(said).toMatchObject({ status: 0, err: '' });
    expect(reportsOf(said)[0]?.capture.channels.map(({ role, name }) => [role, name])).toEqual([
      ['upstreamO2', 'a'],
      ['downstreamO2', 'b'],
      ['rpm', 'c'],
    ]);
    const piped = await run(['-', '--columns', 'columns.json', '--json'], {
      stdin: Readable.from([readFileSync(join(folder, 'plain.csv'))]),
    });
    expect(reportsOf(piped)[0]?.capture.channels[0]?.role).toBe('upstreamO2');
  });

  test('repairs listed as written are not made, and the report says so', async () => {
    const rows = Array.from({ length: 600 }, (_, i) => `${Math.floor(i / 10)},${i % 7 < 3 ? 0.1 : 0.8},0.6,2300`);
    writeFileSync(join(folder, 'coarse.csv'), ['Time (s),O2 B1S1 (V),O2 B1S2 (V),RPM', ...rows].join('\n'));
    writeFileSync(join(folder, 'asWritten.json'), JSON.stringify({ asWritten: ['duplicateTimes'] }));
    const repairOf = (said: Said) => reportsOf(said)[0]?.capture.warnings.find(({ id }) => id === 'duplicateTimes');
    expect(repairOf(await run(['coarse.csv', '--json']))).toMatchObject({ count: 540, repaired: true });
    const said = await run(['coarse.csv', '--columns', 'asWritten.json', '--json', '--sheet', 'coarse.md']);
    expect(said).toMatchObject({ status: 0, err: '' });
    expect(repairOf(said)).toMatchObject({ count: 540, row: 3, repaired: false });
    expect(readFileSync(join(folder, 'coarse.md'), 'utf8')).toMatch(
      /540 rows have .* at one moment\\?. First in row 3\\?. \(the repair was undone\)/,
    );
    // 600 rows in whole seconds from 0 to 59.
    expect(reportsOf(said)[0]?.capture).toMatchObject({ rows: 600, durationS: 59 });
  });

  test('a log of the connector needs no columns, but its repairs can be undone', async () => {
    const frame = (timeS: string, data: string) => `(${timeS}) can0 7E8#04410C${data}\n`;
    const log = frame('1.0', '1AF8') + frame('1.3', '2710') + frame('1.2', '1AF8') + frame('1.4', '2710');
    writeFileSync(join(folder, 'late.log'), log);
    const columns = async (file: unknown) => {
      writeFileSync(join(folder, 'ofLog.json'), JSON.stringify(file));
      return run(['late.log', '--columns', 'ofLog.json', '--json']);
    };
    const said = await columns({ asWritten: ['outOfOrder'] });
    expect(reportsOf(said)[0]?.capture.channels).toMatchObject([{ role: 'rpm', samples: 3 }]);
    expect(await columns({ asWritten: ['outOfOrder'], headerKey: 'other' })).toMatchObject({ status: 2 });
    expect((await columns({ columns: [] })).err).toContain('Leave --columns out.');
  });

  test.each([
    [{ columns: [{ name: 'nope', role: 'rpm' }] }, 'no column "nope"; it has '],
    [{ columns: [{ role: 'rpm' }] }, 'not understood at columns/0'],
    [{ columns: [{ name: 'a', role: 'engine' }] }, 'not understood at columns/0/role'],
    [{ headerKey: 'other', columns: [] }, 'written for another header'],
    [{ colums: [] }, 'not understood at its top'],
    [{ asWritten: ['gap'] }, 'not understood at asWritten/0'],
  ])('%j is refused', async (file, part) => {
    writeFileSync(join(folder, 'wrong.json'), JSON.stringify(file));
    const said = await run(['van.csv', '--columns', 'wrong.json', '--json']);
    expect([said.status, said.out.length]).toEqual([2, 0]);
    expect(said.err).toContain(part);
  });
});
