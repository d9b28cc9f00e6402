import { copyFile, mkdir } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const HERE = dirname(fileURLToPath(import.meta.url));
const ROOT = join(HERE, '..', '..', '..');

/** Bundles the gallery of trace panes and gives the address of its page. `show` goes into the address as it stands. */
export async function buildGallery(folder = join(ROOT, '.cache', 'gallery')): Promise<(show: string) => string> {
  await mkdir(folder, { recursive: true });
  await build({
    entryPoints: [join(HERE, 'gallery.tsx'), join(HERE, 'page.css')],
    outdir: folder,
    bundle: true,
    format: 'iife',
    target: 'chrome114',
    jsx: 'automatic',
    sourcemap: 'linked',
    define: { 'process.env.NODE_ENV': '"development"' },
    loader: { '.woff2': 'file', '.woff': 'file' },
    logLevel: 'error',
  });
  await copyFile(join(HERE, 'gallery.html'), join(folder, 'gallery.html'));
  return (show) => `${pathToFileURL(join(folder, 'gallery.html')).href}?${show}`;
}
