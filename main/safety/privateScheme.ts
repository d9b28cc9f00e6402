import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { protocol, type Session } from 'electron';
import { SCHEME } from './windowAddress.ts';
import { answerWithFile, type SchemeAnswer, windowFiles, windowFilesSchema } from './windowFiles.ts';

/** Must run before the program is ready. */
export function registerPrivateScheme(): void {
  protocol.registerSchemesAsPrivileged([{ scheme: SCHEME, privileges: { standard: true, secure: true } }]);
}

/** Serves the window's own files, of which the build left a list in `listFile`. */
export async function serveWindowFiles(session: Session, folder: string, listFile: string): Promise<void> {
  const names = windowFilesSchema.parse(JSON.parse(await readFile(listFile, 'utf8')));
  const files = windowFiles(folder, names);
  session.protocol.handle(SCHEME, async (request) => response(await answerWithFile(files, request)));
}

export function response({ status, headers, body }: SchemeAnswer): Response {
  return new Response(Buffer.from(body), { status, headers });
}

/** Where the build leaves its list, beside the shell's own bundle. */
export const windowListFile = (bundleFolder: string): string => join(bundleFolder, 'windowFiles.json');
