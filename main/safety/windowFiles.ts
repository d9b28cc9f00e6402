// The files that the private scheme serves: a list made when the program was built. A request names one of them to the
// letter or gets nothing; no path is ever made from what was asked for.

import { readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { z } from 'zod';
import { CONTENT_POLICY, safeHeaders } from './contentPolicy.ts';
import { isOurAddress } from './windowAddress.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
};

const NAME = /^[A-Za-z0-9_-][A-Za-z0-9._-]*(\/[A-Za-z0-9_-][A-Za-z0-9._-]*)*$/;

/** The list as the build wrote it. Names that could lead anywhere else are a mistake of the build, and refused whole. */
export const windowFilesSchema = z.array(z.string().regex(NAME));

/** Files by the path that a request has to name, with where they lie. */
export type WindowFiles = ReadonlyMap<string, string>;

export function windowFiles(folder: string, names: readonly string[]): WindowFiles {
  return new Map(names.map((name) => [`/${name}`, join(folder, name)]));
}

/** What is asked for, as the scheme's handler sees it. */
export interface SchemeRequest {
  readonly method: string;
  readonly url: string;
}

export interface SchemeAnswer {
  readonly status: number;
  readonly headers: Record<string, string>;
  readonly body: Uint8Array;
}

const NOTHING = { headers: safeHeaders('text/plain; charset=utf-8', CONTENT_POLICY), body: new Uint8Array() };

/** Answers a request with a listed file, or with 404 and no byte. Never rejects. */
export async function answerWithFile(
  files: WindowFiles,
  { method, url }: SchemeRequest,
  read: (path: string) => Promise<Uint8Array> = readFile,
): Promise<SchemeAnswer> {
  const path = method === 'GET' && isOurAddress(url) ? files.get(new URL(url).pathname) : undefined;
  if (path === undefined) return { status: 404, ...NOTHING };
  try {
    const body = await read(path);
    const type = TYPES[extname(path)] ?? 'application/octet-stream';
    return { status: 200, headers: safeHeaders(type, CONTENT_POLICY), body };
  } catch {
    return { status: 404, ...NOTHING };
  }
}
