// npm run build: bundles the program into dist/. A part whose sources have not changed since its last build is left
// alone, so that a command which builds first costs nothing when there is nothing to build.

import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readdir, readFile, rename, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, join, parse, relative, sep } from 'node:path';
import { argv } from 'node:process';
import { entryOf, PARTS } from './buildParts.mjs';
import { asList, asText, shippedPackages } from './licences.mjs';
import { CACHE, DIST, inRoot, isStarted, RELEASE_DIST, ROOT } from './places.mjs';
import { runCommand, SetupProblem } from './problem.mjs';

/** What decides a bundle besides its sources. */
const MACHINERY = [
  'package-lock.json',
  'tsconfig.base.json',
  'main/setup/build.mjs',
  'main/setup/buildParts.mjs',
  'main/setup/licences.mjs',
];

/**
 * Builds what is not up to date.
 * @param {{ release?: boolean, only?: readonly string[] }} [wish] `only` names parts of buildParts.mjs; a release goes to
 *   a folder of its own, from which it is packed
 * @returns {Promise<{ built: string[], missing: string[] }>}
 */
export async function build({ release = false, only = PARTS.map((part) => part.id) } = {}) {
  const parts = PARTS.filter((part) => only.includes(part.id));
  const missing = parts.filter((part) => !existsSync(entryOf(part))).map((part) => part.entry);
  const present = parts.filter((part) => existsSync(entryOf(part)));
  const fresh = await Promise.all(present.map((part) => isFresh(part, release)));
  const stale = present.filter((_part, index) => !fresh[index]);
  if (stale.length > 0) {
    const esbuild = await import('esbuild');
    await Promise.all(stale.map((part) => bundle(esbuild, part, release)));
    await listWindowFiles(release);
    await listLicences(release);
  }
  return { built: stale.map((part) => part.id), missing };
}

/**
 * @param {typeof import('esbuild')} esbuild
 * @param {import('./buildParts.mjs').BuildPart} part
 * @param {boolean} release
 */
async function bundle(esbuild, part, release) {
  const result = await esbuild
    .build({
      entryPoints: [entryOf(part)],
      bundle: true,
      sourcemap: release ? false : 'linked',
      minify: release && part.id === 'window',
      legalComments: release ? 'eof' : 'none',
      // What a clone runs and tests is what is shipped: libraries without their checks for developers.
      define: { 'process.env.NODE_ENV': '"production"' },
      metafile: true,
      write: false,
      logLevel: 'silent',
      absWorkingDir: ROOT,
      outdir: join(outputFolder(release), part.folder),
      entryNames: parse(part.output).name,
      ...part.options,
    })
    .catch((error) => {
      throw notBuilt(part, error);
    });
  await Promise.all((result.outputFiles ?? []).map((file) => writeWhole(file.path, file.contents)));
  for (const from of part.copied) {
    await writeWhole(join(outputFolder(release), part.folder, basename(from)), await readFile(inRoot(from)));
  }
  const sources = [...Object.keys(result.metafile?.inputs ?? {}), ...part.copied].filter(isOwnSource);
  await writeWhole(stampPlace(part, release), JSON.stringify({ mark: await markOf(sources, release), sources }));
}

/** @param {string} source */
const isOwnSource = (source) => !source.includes('node_modules') && !source.startsWith('<');

/** Files are replaced whole, so that a program started meanwhile never reads half of one. */
async function writeWhole(/** @type {string} */ place, /** @type {string | Uint8Array} */ contents) {
  await mkdir(dirname(place), { recursive: true });
  const aside = `${place}.${process.pid}.new`;
  await writeFile(aside, contents);
  await rename(aside, place);
}

/** @param {boolean} release */
const outputFolder = (release) => (release ? RELEASE_DIST : DIST);

/**
 * @param {import('./buildParts.mjs').BuildPart} part
 * @param {boolean} release
 */
const stampPlace = (part, release) =>
  join(CACHE, 'build', `${part.id.replace(' ', '-')}${release ? '-release' : ''}.json`);

/**
 * @param {import('./buildParts.mjs').BuildPart} part
 * @param {boolean} release
 */
async function isFresh(part, release) {
  try {
    const { mark, sources } = JSON.parse(await readFile(stampPlace(part, release), 'utf8'));
    const output = join(outputFolder(release), part.folder, part.output);
    return existsSync(output) && mark === (await markOf(sources, release));
  } catch {
    return false; // never built, or a source is gone
  }
}

/**
 * A hash over size and time of every source, which changes when one of them does.
 * @param {readonly string[]} sources
 * @param {boolean} release
 */
async function markOf(sources, release) {
  const lines = await Promise.all(
    [...MACHINERY, ...sources].map(async (source) => {
      const { size, mtimeMs } = await stat(inRoot(source));
      return `${source} ${size} ${mtimeMs}`;
    }),
  );
  return createHash('sha256')
    .update(`${release}\n${lines.sort().join('\n')}`)
    .digest('hex');
}

/** Writes the names that the program's private scheme may serve: dist/main/windowFiles.json, a list of paths. */
async function listWindowFiles(/** @type {boolean} */ release) {
  const folder = join(outputFolder(release), 'renderer');
  if (!existsSync(folder)) return;
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const names = entries
    .filter((entry) => entry.isFile() && !entry.name.endsWith('.new'))
    .map((entry) =>
      relative(folder, join(entry.parentPath ?? entry.path, entry.name))
        .split(sep)
        .join('/'),
    )
    .sort();
  await writeWhole(join(outputFolder(release), 'main', 'windowFiles.json'), `${JSON.stringify(names, null, 1)}\n`);
}

/** Writes dist/main/licences.json for the About page, and the full texts in dist/LICENCES.txt. */
async function listLicences(/** @type {boolean} */ release) {
  const packages = await shippedPackages();
  await writeWhole(join(outputFolder(release), 'main', 'licences.json'), asList(packages));
  await writeWhole(join(outputFolder(release), 'LICENCES.txt'), asText(packages));
}

/**
 * @param {import('./buildParts.mjs').BuildPart} part
 * @param {{ errors?: import('esbuild').Message[], message?: string }} error
 */
function notBuilt(part, error) {
  const first = error.errors?.[0];
  const place = first?.location;
  return new SetupProblem({
    what: `The ${part.id} could not be built: ${first?.text ?? error.message ?? 'no reason given'}.`,
    where: place ? `${place.file}, line ${place.line}` : part.entry,
    doNext: 'mend that line and run the command again; "npm run check" shows every fault of this kind',
  });
}

/** `npm run build` */
async function command() {
  const { prepare } = await import('./prepare.mjs');
  await prepare();
  const start = performance.now();
  const { built, missing } = await build({ release: argv.includes('--release') });
  for (const entry of missing) process.stderr.write(`${entry} does not exist yet: its part was left out.\n`);
  const seconds = ((performance.now() - start) / 1000).toFixed(2);
  process.stdout.write(
    built.length === 0 ? 'Everything is up to date.\n' : `Built ${built.join(', ')} in ${seconds} s.\n`,
  );
}

if (isStarted(import.meta.url)) await runCommand(command);
