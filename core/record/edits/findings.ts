// Findings as they stood when they were made. The core makes them, so they are taken over without a step of their own
// (history's `absorb`); a person never writes one.

import type { KeptFinding } from '../schema.ts';
import type { Edit } from './edit.ts';

/** Keeps these findings in place of all that were kept before, without those about windows that are gone. */
export function keepFindings(findings: readonly KeptFinding[]): Edit {
  return {
    name: 'keep findings',
    apply: (record) => {
      const kept = findings.filter(({ windowId }) => windowId === null || Object.hasOwn(record.windows, windowId));
      return { ...record, findings: Object.fromEntries(kept.map((finding) => [finding.id, finding])) };
    },
  };
}
