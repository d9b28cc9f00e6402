// The headless command in this process, with the real reader and the real core, on files of a folder.

import { Readable } from 'node:stream';
import { commandReportSchema } from '../../core/contract/commandReport.ts';
import { readCapture } from '../../core/reading/readCapture.ts';
import { scoreCapture } from '../../core/scoreCapture.ts';
import { runScore, type World } from '../../main/command/runScore.ts';
import { writeSheet } from '../../main/command/writeSheet.ts';

export interface Said {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the command as if it was typed in this folder; `changed` puts stand-ins in the place of its surroundings. */
export function commandIn(folder: string) {
  return async (words: readonly string[], changed: Partial<World> = {}): Promise<Said> => {
    let out = '';
    let err = '';
    const status = await runScore(words, {
      out: (text) => (out += text),
      err: (text) => (err += text),
      stdin: Readable.from([]),
      folder,
      now: () => '2026-11-24T15:30:00+01:00',
      read: readCapture,
      memory: () => Promise.resolve(Number.POSITIVE_INFINITY),
      score: scoreCapture,
      writeSheet: (sheet, to) => writeSheet(sheet, to, folder),
      ...changed,
    });
    return { status, out, err };
  };
}

/** What the command printed with --json, each line checked against the schema of its reports. */
export function reportsOf({ out }: Said) {
  return out
    .trimEnd()
    .split('\n')
    .map((line) => commandReportSchema.parse(JSON.parse(line)));
}
