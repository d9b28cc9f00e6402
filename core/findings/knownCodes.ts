import type { Capture } from '../capture/capture.ts';

/**
 * Trouble codes to judge by: those a person recorded with the vehicle, and those that the captures' own logs of the
 * diagnostic connector report, whatever their status. Upper case, each once, the person's first.
 */
export function knownCodes(captures: readonly Capture[], given: readonly string[]): readonly string[] {
  const heard = captures.flatMap(({ reported }) => reported?.codes.map(({ code }) => code) ?? []);
  return heard.length === 0 ? given : [...new Set([...given, ...heard])];
}
