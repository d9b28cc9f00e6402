// Builds the window with the stand-in shell and serves it to an ordinary browser from this machine.

import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { build } from 'esbuild';
import { SAMPLE_DRIVES } from '../../core/simulation/sampleDrives/index.ts';
import { PARTS } from '../../main/setup/buildParts.mjs';

const ROOT = new URL('../../', import.meta.url);

export interface ServedWindow {
  readonly address: string;
  close(): Promise<void>;
}

/** Serves the window on a free port of this machine. */
export async function serveWindow(): Promise<ServedWindow> {
  const files = await builtFiles();
  const server = createServer((request, response) => {
    const name = new URL(request.url ?? '/', 'http://localhost').pathname.slice(1) || 'index.html';
    void answerOf(name, files).then((body) => {
      response.writeHead(body === null ? statusOfNothing(name) : 200, {
        'content-type': typeOf(name),
        'cache-control': 'no-store',
      });
      response.end(body);
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return { address: `http://localhost:${portOf(server)}/`, close: () => closed(server) };
}

/** The sample drives with their sizes, as the real shell offers them. */
export async function sampleWords(): Promise<{ name: string; words: string; bytes: number }[]> {
  return Promise.all(
    SAMPLE_DRIVES.map(async ({ file, words }) => {
      const bytes = (await readFile(new URL(`assets/drives/${file}`, ROOT))).length;
      return { name: file, words, bytes };
    }),
  );
}

async function builtFiles(): Promise<Map<string, Uint8Array>> {
  const part = PARTS.find(({ id }) => id === 'window');
  const result = await build({
    ...part?.options,
    entryPoints: { main: 'renderer/main.tsx', standIn: 'test/support/standInPage.ts' },
    entryNames: '[name]',
    outdir: 'out',
    bundle: true,
    write: false,
    logLevel: 'silent',
    define: { 'process.env.NODE_ENV': '"development"' },
    absWorkingDir: new URL('.', ROOT).pathname,
  });
  const files = new Map(result.outputFiles.map((file) => [file.path.replace(/^.*\/out\//, ''), file.contents]));
  const page = await readFile(new URL('renderer/index.html', ROOT), 'utf8');
  const samples = JSON.stringify(await sampleWords());
  const before = `<script>window.standInSamples = ${samples};</script><script src="standIn.js"></script>`;
  files.set(
    'index.html',
    new TextEncoder().encode(page.replace('<script src="main.js"', `${before}<script src="main.js"`)),
  );
  return files;
}

async function answerOf(name: string, files: Map<string, Uint8Array>): Promise<Uint8Array | null> {
  const drive = /^drives\/([a-z-]+\.[a-z]+)$/.exec(name);
  if (drive !== null) return readFile(new URL(`assets/drives/${drive[1]}`, ROOT));
  return files.get(name) ?? null;
}

/** A browser asks for a small picture by itself; that there is none is no fault. */
function statusOfNothing(name: string): number {
  return name === 'favicon.ico' ? 204 : 404;
}

function typeOf(name: string): string {
  if (name.endsWith('.html')) return 'text/html; charset=utf-8';
  if (name.endsWith('.css')) return 'text/css; charset=utf-8';
  if (name.endsWith('.js')) return 'text/javascript; charset=utf-8';
  return 'application/octet-stream';
}

function portOf(server: Server): number {
  const address = server.address() as AddressInfo;
  return address.port;
}

function closed(server: Server): Promise<void> {
  return new Promise((resolve, reject) => server.close((fault) => (fault === undefined ? resolve() : reject(fault))));
}
