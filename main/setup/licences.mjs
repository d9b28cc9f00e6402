// The packages that are shipped inside the program, with their licences: a short list for the About page and the full
// texts beside the program. Made from what is installed, so that neither can fall behind.

import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { inRoot } from './places.mjs';

/** @typedef {{ name: string, version: string, licence: string, text: string }} ShippedPackage */

/**
 * Every production package of the lock file, sorted by name. Development tools are not shipped.
 * @returns {Promise<ShippedPackage[]>}
 */
export async function shippedPackages() {
  const lock = JSON.parse(await readFile(inRoot('package-lock.json'), 'utf8'));
  const places = Object.entries(lock.packages)
    .filter(([place, entry]) => place !== '' && entry.dev !== true && entry.devOptional !== true && entry.peer !== true)
    .map(([place]) => place)
    .filter((place) => existsSync(inRoot(place)));
  const packages = await Promise.all(places.map(describe));
  return packages.sort((a, b) => (a.name < b.name ? -1 : 1));
}

/**
 * @param {string} place
 * @returns {Promise<ShippedPackage>}
 */
async function describe(place) {
  const { name, version, license } = JSON.parse(await readFile(inRoot(place, 'package.json'), 'utf8'));
  const file = (await readdir(inRoot(place))).find((entry) => /^(licen[cs]e|ofl)/i.test(entry));
  const text = file === undefined ? '' : await readFile(join(inRoot(place), file), 'utf8');
  return { name, version, licence: typeof license === 'string' ? license : 'see its package', text };
}

/** @param {readonly ShippedPackage[]} packages */
export const asList = (packages) =>
  `${JSON.stringify(
    packages.map(({ name, version, licence }) => ({ name, version, licence })),
    null,
    1,
  )}\n`;

/** @param {readonly ShippedPackage[]} packages */
export function asText(packages) {
  const head =
    'Tailtrace contains the packages below. Electron and Chromium, on which it runs, bring their own licence files.\n';
  const parts = packages.map(({ name, version, licence, text }) => {
    const rule = '-'.repeat(80);
    return `${rule}\n${name} ${version}, ${licence}\n${rule}\n\n${text.trim() || 'No licence text came with this package.'}\n`;
  });
  return [head, ...parts].join('\n');
}
