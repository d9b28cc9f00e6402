// What the report for people says of a bundle. Names come from strangers: what is not seen is written out.

import type { ReportedBundle } from '../../core/contract/commandReport.ts';
import { stretchWords } from '../../core/evidence/words/quantities.ts';
import { showControlsOnOneLine } from '../../core/evidence/words/showControls.ts';
import { sureBriefly } from '../../core/evidence/words/sure.ts';
import { FINDING_WORDS } from '../../core/evidence/words/terms.ts';
import { CORE_VERSION } from '../../core/version.ts';
import type { CheckedBundle } from '../bundles/openBundle.ts';

/** What was found of the bundle itself. */
export function bundleLines(name: string, { manifest, manifestSha256, record, otherCore }: CheckedBundle): string[] {
  return [
    `${name}, ${record.identity.name}: every file is as it was when the bundle was made, ${manifest.madeAt}`,
    `  SHA-256 of its manifest ${manifestSha256}`,
    ...(otherCore === null
      ? []
      : [`  Version ${otherCore} of the core made its findings; this is version ${CORE_VERSION}.`]),
    '',
  ].map(showControlsOnOneLine);
}

/** Captures that the record names and the bundle does not hold: one line each, for standard error. */
export function notEnclosedLines({ manifest, record }: CheckedBundle): string[] {
  const enclosed = new Set(manifest.captures.map(({ captureId }) => captureId));
  return Object.values(record.captures)
    .filter(({ id }) => !enclosed.has(id))
    .map(({ name }) => `${name}: The record names this capture, and the bundle does not hold it.`)
    .map(showControlsOnOneLine);
}

/** The findings that came with a capture, beside those that were worked out here. */
export function comparedLines({ windows, vehicle }: ReportedBundle): string[] {
  const named = windows.map((one) => ({ ...one, name: one.name || stretchWords(one.startS, one.endS, '.') }));
  return ['', '  Came with the bundle, and worked out again here:', ...[...named, vehicle].map(comparedLine)].map(
    showControlsOnOneLine,
  );
}

type Compared = ReportedBundle['vehicle'];

function comparedLine({ name, kept, recomputed, agree }: Compared): string {
  const told = `    ${name}: ${kept === null ? 'no finding was kept' : findingWords(kept)}`;
  if (recomputed === null) return `${told}; not worked out, because a capture is missing`;
  if (agree === null) return `${told}; here ${findingWords(recomputed)}`;
  if (agree) return `${told}; the same here`;
  const here = findingWords(recomputed);
  const unseen = kept !== null && findingWords(kept) === here ? ', in digits that are not shown' : '';
  return `${told}; HERE ANOTHER${unseen}: ${here}`;
}

function findingWords({ finding, probabilityNotStoring }: NonNullable<Compared['recomputed']>): string {
  const sure = sureBriefly(finding, probabilityNotStoring, '.');
  return `${FINDING_WORDS[finding].toLowerCase()}${sure === null ? '' : ` (${sure})`}`;
}
