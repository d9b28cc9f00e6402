// What the build makes: eight bundles. One build runs on the oldest runtime that is supported (Node 18.15 inside
// Electron 25, Chromium 114) and on the current one.

import { inRoot } from './places.mjs';

/**
 * @typedef {object} BuildPart
 * @property {string} id
 * @property {string} entry first source file, from the root
 * @property {'main' | 'renderer'} folder of the bundle, within what the build writes
 * @property {string} output name of the bundle in that folder
 * @property {import('esbuild').BuildOptions} options
 * @property {readonly string[]} copied files that are copied beside the bundle, from the root
 */

/** @type {import('esbuild').BuildOptions} */
const shell = {
  platform: 'node',
  target: 'node18',
  format: 'cjs', // the main process of Electron before 28 cannot load ES modules
  external: ['electron'],
  outExtension: { '.js': '.cjs' },
};

/** Lets CommonJS packages inside an ES module bundle reach Node's own modules. */
export const REQUIRE_IN_MODULE =
  "import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);";

/** @type {readonly BuildPart[]} */
export const PARTS = [
  { id: 'shell', entry: 'main/index.ts', folder: 'main', output: 'index.cjs', options: shell, copied: [] },
  { id: 'preload', entry: 'main/preload.ts', folder: 'main', output: 'preload.cjs', options: shell, copied: [] },
  {
    id: 'core process',
    entry: 'main/coreProcess/index.ts',
    folder: 'main',
    output: 'coreProcess.cjs',
    options: shell,
    copied: [],
  },
  {
    id: 'slow thread',
    entry: 'main/coreProcess/slowThread.ts',
    folder: 'main',
    output: 'slowThread.cjs',
    options: shell,
    copied: [],
  },
  {
    id: 'hash thread',
    entry: 'main/coreProcess/hashThread.ts',
    folder: 'main',
    output: 'hashThread.cjs',
    options: shell,
    copied: [],
  },
  {
    id: 'bundle process',
    entry: 'main/bundles/bundleProcess.ts',
    folder: 'main',
    output: 'bundleProcess.cjs',
    options: shell,
    copied: [],
  },
  {
    id: 'score',
    entry: 'main/command/score.ts',
    folder: 'main',
    output: 'score.mjs',
    options: {
      platform: 'node',
      target: 'node20',
      format: 'esm',
      outExtension: { '.js': '.mjs' },
      banner: { js: REQUIRE_IN_MODULE },
    },
    copied: [],
  },
  {
    id: 'window',
    entry: 'renderer/main.tsx',
    folder: 'renderer',
    output: 'main.js',
    options: {
      platform: 'browser',
      target: 'chrome114',
      format: 'iife', // works as a plain script and as a module script
      jsx: 'automatic',
      assetNames: 'fonts/[name]',
      loader: { '.woff2': 'file', '.woff': 'file', '.svg': 'file', '.png': 'file' },
    },
    copied: ['renderer/index.html'],
  },
];

/** @param {BuildPart} part */
export const entryOf = (part) => inRoot(part.entry);
