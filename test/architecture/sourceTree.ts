// The files of the repository as the tests of the walls see them.

import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export const ROOT = join(import.meta.dirname, '..', '..');

/** Paths from the root, with forward slashes: what git tracks or would track, and that is there. */
export function repositoryFiles(): string[] {
  const listing = execFileSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], {
    cwd: ROOT,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  return [...new Set(listing.split('\0'))].filter((path) => path !== '' && existsSync(join(ROOT, path))).sort();
}

/** Source files in TypeScript and JavaScript below the four folders of the house. */
export function sourceFiles(): string[] {
  return repositoryFiles().filter((path) => /^(core|main|renderer|test)\/.*\.(ts|tsx|mjs|cjs)$/.test(path));
}

export const readText = (path: string): string => readFileSync(join(ROOT, path), 'utf8');
