// The made-up vehicle with one text in every place where a stranger, a reader or a file may put one.

import type { SheetInput } from '../../core/evidence/sheetInput.ts';
import type { Verdict } from '../../core/findings/finding.ts';
import type { Signed } from '../../core/record/opinionSchema.ts';
import { sheetInput } from './sheetInput.ts';

/** `text` everywhere. `include` decides about the private fields. */
export function hostileSheet(text: string, include = true): SheetInput {
  const input = sheetInput();
  const { record, score, captures, settings } = input;
  const [compared] = input.comparisons;
  const { c1 } = record.captures;
  const facts = captures.c1;
  if (!c1 || !facts || !compared) throw new Error('the made-up vehicle is not what this was written for');
  const verdict = hostileVerdict(score.before.verdict, text);
  return {
    ...input,
    record: {
      ...record,
      identity: {
        ...record.identity,
        name: text,
        description: text,
        vin: text,
        plate: text,
        customer: text,
        complaint: text,
      },
      papers: { ...record.papers, make: text, reason: text, partFitted: text, oldPartTag: text },
      captures: { c1: { ...c1, name: text } },
      windows: Object.fromEntries(Object.values(record.windows).map((one) => [one.id, { ...one, name: text }])),
      notes: Object.fromEntries(Object.values(record.notes).map((one) => [one.id, { ...one, text, author: text }])),
    },
    score: {
      ...score,
      sentence: text,
      before: {
        verdict,
        banks: [
          { ...verdict, bank: 1 },
          { ...verdict, bank: 2 },
        ],
      },
      thermal: score.thermal.map((one) => ({ ...one, reading: { ...one.reading, reading: text } })),
      windows: score.windows.map((one) => ({
        ...one,
        score: {
          ...one.score,
          ...hostileVerdict(score.before.verdict, text),
          conditions: one.score.conditions.map((condition) => ({ ...condition, id: text, detail: text })),
          measures: one.score.measures.map((measure) => ({
            ...measure,
            id: text,
            missing: measure.value === null ? text : null,
          })),
        },
      })),
    },
    opinions: input.opinions.map((link) => ({ ...link, entry: hostileEntry(link.entry, text) })),
    captures: {
      c1: {
        ...facts,
        startClock: text,
        layout: { id: text, words: text, headerKey: text },
        warnings: facts.warnings.map((warning) => ({ ...warning, detail: text })),
        channels: facts.channels.map((channel) => ({ ...channel, name: text, unit: text })),
      },
    },
    pictures: [{ captureId: 'c1', caption: text, alternative: text, svg: text }],
    comparisons: [
      {
        first: text,
        second: text,
        comparison: {
          ...compared.comparison,
          sentence: text,
          unlike: [{ id: text, words: text }],
          pairs: compared.comparison.pairs.map((pair) => ({ ...pair, words: text, unit: text })),
        },
      },
    ],
    hash: { of: text, sha256: text },
    settings: {
      ...settings,
      reader: text,
      coreVersion: text,
      include: { vin: include, plate: include, customer: include, complaint: include, signers: include },
    },
  };
}

function hostileEntry(entry: Signed, text: string): Signed {
  const signed = { author: { name: text, licence: text }, coreVersion: text };
  if (entry.kind === 'withdrawal') return { ...entry, ...signed, reason: text };
  return {
    ...entry,
    ...signed,
    reasons: text,
    nextTest: text,
    windows: entry.windows.map((window) => ({
      ...window,
      coreSaid: window.coreSaid.map((said) => ({ ...said, coreVersion: text })),
    })),
  };
}

function hostileVerdict(verdict: Verdict, text: string): Verdict {
  return {
    ...verdict,
    sentence: text,
    reasons: verdict.reasons.map((reason) => ({ ...reason, detail: text })),
    blockers: [{ id: text, words: text, removedBy: text }],
    nextTests: [{ id: text, words: text, why: text, minutes: 5 }],
  };
}
