import { readFileSync } from 'node:fs';
import type { Capture } from '../../core/capture/capture.ts';
import { readCapture } from '../../core/reading/readCapture.ts';

/** One of the invented drives in assets/drives, read as the program reads it. */
export async function sampleCapture(file: string): Promise<Capture> {
  const bytes = new Uint8Array(readFileSync(new URL(`../../assets/drives/${file}`, import.meta.url)));
  const outcome = await readCapture(
    {
      name: file,
      bytes: bytes.length,
      rereadable: true,
      async *chunks() {
        yield bytes;
      },
    },
    { choice: null },
  );
  if (!outcome.ok) throw new Error(outcome.problem.what);
  return outcome.value.capture;
}
