// The evidence sheet: what is handed to the customer, the warranty desk and the second reader.

import { SECTIONS } from './sections/index.ts';
import type { Sheet } from './sheet.ts';
import type { SheetInput } from './sheetInput.ts';
import { dayOf } from './words/quantities.ts';

/**
 * The sheet of a vehicle as a document, from its record and its score; formats/ write it. Pure: the same input gives the
 * same sheet. Private fields that are not included never get into it (T-PRIV-1), and it says which were left out.
 */
export function buildSheet(input: SheetInput): Sheet {
  const { record, settings, hash } = input;
  const stamp = hash === null ? [] : [hash.sha256.slice(0, 12)];
  return {
    title: `Evidence sheet: ${record.identity.name}`,
    foot: [record.identity.name, dayOf(settings.madeAt), ...stamp].join(' · '),
    language: 'en',
    paper: settings.paper,
    decimalSign: settings.decimalSign,
    madeAt: settings.madeAt,
    coreVersion: settings.coreVersion,
    sections: SECTIONS.map((section) => section.build(input)).filter((section) => section !== null),
  };
}
