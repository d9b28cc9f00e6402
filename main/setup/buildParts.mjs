// What the build makes: five bundles. One build runs on the oldest runtime that is supported (Node 18.15 inside
// Electron 25, Chromium 114) and on the current one.

import { DIST, inRoot } from './places.mjs';

/**
 * @typedef {object} BuildPart
 * @property {string} id
 * @property {string} entry first source file, from the root
 * @property {import('esbuild').BuildOptions} options
 * @property {readonly string[]} copied files that are copied beside the bundle, from the root
 */

/** @type {import('esbuild').BuildOptions} */
const shell = {
  platform: 'node',
  target: 'node18',
  format: 'cjs', // the main process of Electron before 28 cannot load ES modules
  external: ['electron'],
  outdir: `${DIST}/main`,
  outExtension: { '.js': '.cjs' },
};

/** Lets CommonJS packages inside an ES module bundle reach Node's own modules. */
export const REQUIRE_IN_MODULE =
  "import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);";

/** @type {readonly BuildPart[]} */
export const PARTS = [
  { id: 'shell', entry: 'main/index.ts', options: { ...shell, entryNames: 'index' }, copied: [] },
  { id: 'preload', entry: 'main/preload.ts', options: { ...shell, entryNames: 'preload' }, copied: [] },
  {
    id: 'core process',
    entry: 'main/coreProcess/index.ts',
    options: { ...shell, entryNames: 'coreProcess' },
    copied: [],
  },
  {
    id: 'score',
    entry: 'main/command/score.ts',
    options: {
      platform: 'node',
      target: 'node20',
      format: 'esm',
      outdir: `${DIST}/main`,
      outExtension: { '.js': '.mjs' },
      entryNames: 'score',
      banner: { js: REQUIRE_IN_MODULE },
    },
    copied: [],
  },
  {
    id: 'window',
    entry: 'renderer/main.tsx',
    options: {
      platform: 'browser',
      target: 'chrome114',
      format: 'iife', // works as a plain script and as a module script
      jsx: 'automatic',
      outdir: `${DIST}/renderer`,
      entryNames: 'main',
      assetNames: 'fonts/[name]',
      loader: { '.woff2': 'file', '.woff': 'file', '.svg': 'file', '.png': 'file' },
    },
    copied: ['renderer/index.html'],
  },
];

/** @param {string} id */
export function partNamed(id) {
  const part = PARTS.find((candidate) => candidate.id === id);
  if (part === undefined) throw new Error(`no part of the build is called ${id}`);
  return part;
}

/** @param {BuildPart} part */
export const entryOf = (part) => inRoot(part.entry);
