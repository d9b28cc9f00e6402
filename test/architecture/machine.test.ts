// The repository speaks of the product alone: nothing of the computer it was written on, and of no server that was near.

import { homedir } from 'node:os';
import { describe, expect, test } from 'vitest';
import { ROOT, readText, repositoryFiles } from './sourceTree.ts';

/** Written in pieces, so that this file does not hold what it looks for. */
const REGISTRY_HOSTS = [
  ['registry', 'npmjs', 'org'],
  ['deb', 'debian', 'org'],
  ['registry', 'yarnpkg', 'com'],
].map((name) => name.join('.'));

const BINARY = /\.(png|ico|icns|woff2?|pdf|zip|gz|mf4|jpg)$/;
const GENERATED = /^assets\/drives\//;

/** A folder of one person or one machine, written out. Invented ones in tests stand below /home/… with a made-up name. */
const PRIVATE_FOLDERS = /(^|[\s"'`(=:])(\/root\/|\/work\/|\/Users\/|[A-Z]:\\Users\\)/;

const FILES = repositoryFiles().filter((path) => !BINARY.test(path) && !GENERATED.test(path));

/** Lines of a text that hold what may not be there, as "path:line". */
function tracesIn(path: string, text: string): string[] {
  const own = [ROOT, homedir()].filter((name) => name.length > 5);
  const bad = [...own, ...REGISTRY_HOSTS];
  return text.split('\n').flatMap((line, index) => {
    const found = bad.some((name) => line.includes(name)) || (!path.startsWith('test/') && PRIVATE_FOLDERS.test(line));
    return found ? [`${path}:${index + 1}`] : [];
  });
}

describe('no trace of a machine', () => {
  test('in any file of the repository', () => {
    expect(FILES.length).toBeGreaterThan(100);
    expect(FILES.flatMap((path) => tracesIn(path, readText(path)))).toEqual([]);
  });

  test('the lock file leaves the choice of the registry to whoever installs, and pins what is installed by its hash', () => {
    const lock: unknown = JSON.parse(readText('package-lock.json'));
    const text = JSON.stringify(lock);
    expect(text).not.toContain('"resolved"');
    expect(text.match(/"integrity":"sha512-/g)?.length).toBeGreaterThan(100);
  });

  test('a planted one is found', () => {
    expect(tracesIn('core/x.ts', `const a = 1;\nconst b = '${ROOT}/x';`)).toEqual(['core/x.ts:2']);
    expect(tracesIn('README.md', `see https://${REGISTRY_HOSTS[0]}/x`)).toEqual(['README.md:1']);
    expect(tracesIn('main/x.ts', `open('/${'root'}/x')`)).toEqual(['main/x.ts:1']);
  });
});
