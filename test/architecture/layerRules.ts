// Holds the imports of one file against the table and says in words what is not allowed.

import { isBuiltin } from 'node:module';
import { posix } from 'node:path';
import { EXCEPTIONS, LAYERS, type Layer } from './layerTable.ts';
import { type FoundImport, importsOf } from './readImports.ts';

/** The row that counts for a path: the longest that holds it. */
export function layerOf(path: string): Layer | null {
  const rows = LAYERS.filter((layer) => lies(path, layer.folder));
  return rows.sort((a, b) => b.folder.length - a.folder.length)[0] ?? null;
}

function lies(path: string, folder: string): boolean {
  if (folder.endsWith('/*')) return posix.dirname(path) === folder.slice(0, -2);
  return path === folder || path.startsWith(`${folder}/`);
}

/** What one file imports against the table, a sentence each. */
export function faultsOf(path: string, text: string): string[] {
  const layer = layerOf(path);
  if (layer === null) return [`${path} lies in a folder that is not in the table of test/architecture/layerTable.ts.`];
  return importsOf(path, text).flatMap((found) => faultOf(path, layer, found) ?? []);
}

function faultOf(path: string, layer: Layer, found: FoundImport): string | null {
  if (EXCEPTIONS.some((exception) => exception.file === path && exception.imports === found.named)) return null;
  const allowed = found.file === null ? mayPackage(layer, found.named) : mayFile(layer, found.file, found.typeOnly);
  if (allowed) return null;
  const what = found.file === null ? found.named : found.file;
  return `${path}:${found.line} may not import ${what}. ${layer.folder} (${layer.purpose}) may import ${rights(layer)}.`;
}

function mayFile(layer: Layer, file: string, typeOnly: boolean): boolean {
  const target = layerOf(file)?.folder;
  if (target === undefined) return false;
  if (target === layer.folder || target.startsWith(`${layer.folder}/`)) return true;
  const folders = typeOnly ? [...layer.may, ...(layer.types ?? [])] : layer.may;
  return folders.some((folder) => lies(file, folder));
}

function mayPackage(layer: Layer, named: string): boolean {
  const packages = layer.packages ?? [];
  if (packages.includes('*')) return true;
  if (isBuiltin(named)) return packages.includes('node');
  return packages.some((name) => lies(named, name));
}

function rights(layer: Layer): string {
  const types = (layer.types ?? []).map((folder) => `${folder} (types only)`);
  const packages = (layer.packages ?? []).map((name) => (name === 'node' ? 'Node' : name));
  return [`itself`, ...layer.may, ...types, ...packages].join(', ');
}

/** Folders of the house, one level below core, main, renderer and test, that no row of their own describes. */
export function foldersWithoutRow(files: readonly string[]): string[] {
  const folders = files.flatMap((file) => /^(core|main|renderer)\/[^/]+(?=\/)/.exec(file)?.[0] ?? []);
  return [...new Set(folders)].filter((folder) => !LAYERS.some((layer) => layer.folder === folder)).sort();
}

/** A way from a row back to itself along what it may import at run time, or null: the order of core has no rings. */
export function ringIn(layers: readonly Layer[]): string | null {
  const rows = new Map(layers.map((layer) => [layer.folder, layer]));
  const done = new Set<string>();
  const walk = (folder: string, way: readonly string[]): string | null => {
    if (way.includes(folder)) return [...way.slice(way.indexOf(folder)), folder].join(' to ');
    if (done.has(folder)) return null;
    for (const next of rows.get(folder)?.may ?? []) {
      const ring = next === folder ? null : walk(next, [...way, folder]);
      if (ring !== null) return ring;
    }
    done.add(folder);
    return null;
  };
  for (const { folder } of layers) {
    const ring = walk(folder, []);
    if (ring !== null) return ring;
  }
  return null;
}
