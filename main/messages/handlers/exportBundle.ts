import type { z } from 'zod';
import type { SHELL_REQUESTS } from '../../../core/bridge/shellMessages.ts';
import type { Outcome, Problem } from '../../../core/reading/problem.ts';
import { tooLarge } from '../../bundles/bundleSizes.ts';
import type { PackWish } from '../../bundles/packBundle.ts';
import { localInstant } from '../../command/localInstant.ts';
import { type Exported, exportFile } from '../../exports/exportFile.ts';
import type { ShellTools } from './tools.ts';

export type BundleWish = z.output<(typeof SHELL_REQUESTS)['exportBundle']['ask']>;

/** What became of a bundle; without a path where nothing was begun. */
interface ExportedBundle {
  readonly exported: Exported | null;
  /** Of the bundle that was written, or null. */
  readonly manifestSha256: string | null;
}

/** Packs a bundle where the person says. Refused before that where it would be too large or a capture is not there. */
export async function exportBundle(
  { exporting, bundles, library }: Pick<ShellTools, 'exporting' | 'bundles' | 'library'>,
  { suggestedName, record, sheet, captureIds }: BundleWish,
): Promise<ExportedBundle> {
  const captures = await placed(library, record, captureIds);
  if (!captures.ok) return { exported: notBegun(captures.problem), manifestSha256: null };
  let manifestSha256: string | null = null;
  const content = async (): Promise<Outcome<Uint8Array>> => {
    const packed = await bundles.pack({ record, sheet, captures: captures.value, madeAt: localInstant(new Date()) });
    if (!packed.ok) return packed;
    manifestSha256 = packed.value.manifestSha256;
    return { ok: true, value: packed.value.bytes };
  };
  const exported = await exportFile(exporting, { suggestedName, kind: 'tailtrace-bundle', content });
  return { exported, manifestSha256: exported?.problem === null ? manifestSha256 : null };
}

/** Where the captures lie that go in. */
async function placed(
  library: ShellTools['library'],
  record: BundleWish['record'],
  captureIds: readonly string[],
): Promise<Outcome<PackWish['captures']>> {
  const wanted = Object.values(record.captures).filter(({ id }) => captureIds.includes(id));
  const problem = tooLarge(wanted.reduce((sum, { bytes }) => sum + bytes, 0));
  if (problem !== null) return { ok: false, problem };
  const found: PackWish['captures'][number][] = [];
  const missing: string[] = [];
  for (const { id, name, sha256 } of wanted) {
    const path = await library.whereIs(sha256, name);
    if (path === null) missing.push(name);
    else found.push({ captureId: id, name, sha256, path });
  }
  return missing.length === 0 ? { ok: true, value: found } : { ok: false, problem: notThere(missing) };
}

const notBegun = (problem: Problem): Exported => ({ path: '', name: '', problem });

const notThere = (names: readonly string[]): Problem => ({
  id: 'bundle.captureMissing',
  what: `${names.join(', ')}: not found where it was.`,
  where: names[0] ?? 'the bundle',
  doNext: 'Say where the file is now, or leave it out of the bundle.',
});
