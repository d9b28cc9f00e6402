// The direction of every import, held against the table in layerTable.ts; and faults planted to see that the rule bites.

import { describe, expect, test } from 'vitest';
import { faultsOf, foldersWithoutRow, layerOf, ringIn } from './layerRules.ts';
import { EXCEPTIONS, LAYERS, type Layer } from './layerTable.ts';
import { importsOf } from './readImports.ts';
import { readText, sourceFiles } from './sourceTree.ts';

const FILES = sourceFiles();

describe('the house', () => {
  test('has files to look at: a check that reads nothing would pass', () => {
    expect(FILES.length).toBeGreaterThan(100);
    expect(FILES.flatMap((path) => importsOf(path, readText(path))).length).toBeGreaterThan(FILES.length);
  });

  test('every import follows the table', () => {
    expect(FILES.flatMap((path) => faultsOf(path, readText(path)))).toEqual([]);
  });

  test('every folder has a row with its purpose', () => {
    expect(foldersWithoutRow(FILES)).toEqual([]);
    expect(LAYERS.filter((layer) => layer.purpose.length < 10)).toEqual([]);
  });

  test('no row stands twice, and none is about nothing', () => {
    const folders = LAYERS.map((layer) => layer.folder);
    expect(new Set(folders).size).toBe(folders.length);
    expect(folders.filter((folder) => !FILES.some((path) => layerOf(path)?.folder === folder))).toEqual([]);
  });

  test('what may be imported at run time never leads back', () => {
    expect(ringIn(LAYERS)).toBeNull();
  });

  test('every exception is still needed and says why', () => {
    const idle = EXCEPTIONS.filter(
      ({ file, imports, reason }) =>
        reason.length < 20 || !importsOf(file, readText(file)).some((found) => found.named === imports),
    );
    expect(idle).toEqual([]);
  });
});

describe('a planted fault is found', () => {
  test.each([
    ['core/signal/x.ts', "import { a } from '../../main/store/x.ts';", 'may not import main/store/x.ts'],
    ['core/signal/x.ts', "import type { A } from '../../main/store/x.ts';", 'may not import main/store/x.ts'],
    ['core/signal/x.ts', "export { a } from '../../renderer/x.ts';", 'may not import renderer/x.ts'],
    ['core/signal/x.ts', "export * from '../../renderer/x.ts';", 'may not import renderer/x.ts'],
    ['core/signal/x.ts', "export const a = import('../../main/x.ts');", 'may not import main/x.ts'],
    ['core/signal/x.ts', "export type A = typeof import('../../main/x.ts');", 'may not import main/x.ts'],
    ['core/signal/x.ts', "import a = require('../../main/x.ts');", 'may not import main/x.ts'],
    ['core/signal/x.ts', "import '../measures/index.ts';", 'may not import core/measures/index.ts'],
    ['core/signal/x.ts', "import { a } from '../x.ts';", 'may not import core/x.ts'],
    ['core/signal/x.ts', "import fs from 'node:fs';", 'may not import node:fs'],
    ['core/signal/x.ts', "import fs from 'fs';", 'may not import fs'],
    ['core/signal/x.ts', "import { app } from 'electron';", 'may not import electron'],
    ['core/signal/x.ts', "import { z } from 'zod';", 'may not import zod'],
    ['core/reading/x.ts', "import { a } from '../record/schema.ts';", 'may not import core/record/schema.ts'],
    ['core/scoreCapture.ts', "import { a } from './simulation/population.ts';", 'may not import core/simulation'],
    ['core/scoreCapture.ts', "import { a } from './bridge/coreMessages.ts';", 'may not import core/bridge'],
    ['core/gossip/x.ts', '', 'lies in a folder that is not in the table'],
    [
      'renderer/panes/X.tsx',
      "import { a } from '../../main/x.ts';\nexport const b = <p />;",
      'may not import main/x.ts',
    ],
    ['renderer/panes/X.tsx', "import type { A } from '../../main/x.ts';", 'may not import main/x.ts'],
    ['renderer/plot/x.ts', "import { a } from '../state/recordStore.ts';", 'may not import renderer/state'],
    ['main/window/x.ts', "import { a } from '../../renderer/x.ts';", 'may not import renderer/x.ts'],
    ['main/store/x.ts', "import { app } from 'electron';", 'may not import electron'],
    ['main/command/x.ts', "import { a } from '../window/x.ts';", 'may not import main/window/x.ts'],
  ])('%s: %s', (path, text, words) => {
    expect(faultsOf(path, text)).toEqual([expect.stringContaining(words)]);
  });

  test('what is allowed is allowed, and comments and strings import nothing', () => {
    const reading = [
      "// import { a } from '../../main/x.ts';",
      "import type { Choice } from '../record/schema.ts';",
      "import Papa from 'papaparse';",
      "import { volts } from '../units/quantities.ts';",
      "import { csv } from './layouts/index.ts';",
      'export const words = "import { b } from \'../../main/x.ts\'";',
    ];
    expect(faultsOf('core/reading/x.ts', reading.join('\n'))).toEqual([]);
  });

  test('a sentence says what to do: what the folder is for, and what it may import', () => {
    expect(faultsOf('core/statistics/x.ts', "\nimport fs from 'node:fs';")).toEqual([
      'core/statistics/x.ts:2 may not import node:fs. core/statistics (distributions, intervals and tests) may import itself, core/units.',
    ]);
  });

  test('a new folder without a row, and a ring of rows', () => {
    expect(foldersWithoutRow(['core/gossip/x.ts', 'core/signal/x.ts'])).toEqual(['core/gossip']);
    const row = (folder: string, may: string[]): Layer => ({ folder, purpose: 'planted', may });
    expect(ringIn([row('a', ['b']), row('b', ['c']), row('c', ['a'])])).toBe('a to b to c to a');
  });
});
