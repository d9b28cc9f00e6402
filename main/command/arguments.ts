// The words behind `npm run score --`, understood or refused in one sentence.

import { extname } from 'node:path';
import { parseArgs } from 'node:util';
import type { Bank } from '../../core/capture/roles.ts';
import { parseTroubleCodes } from '../../core/record/parseTroubleCodes.ts';
import type { Temperature } from '../../core/record/schema.ts';
import { parseTemperature } from './typedTemperature.ts';
import { parseWindow, type TypedWindow } from './typedWindow.ts';

export interface ScoreArguments {
  /** As typed; "-" is standard input. At least one. */
  readonly captures: readonly string[];
  readonly json: boolean;
  readonly describe: boolean;
  /** Null scores the suggested ones. */
  readonly windows: readonly TypedWindow[] | null;
  /** In the order of the converters along the exhaust. */
  readonly temperatures: readonly { readonly inlet: Temperature; readonly outlet: Temperature }[];
  readonly bank: Bank;
  readonly columns: string | null;
  readonly sheet: { readonly path: string; readonly ending: SheetEnding } | null;
  readonly troubleCodes: readonly string[];
}

export const SHEET_ENDINGS = ['html', 'pdf', 'csv', 'json', 'md'] as const;
export type SheetEnding = (typeof SHEET_ENDINGS)[number];

export type ReadArguments =
  | { readonly kind: 'score'; readonly arguments: ScoreArguments }
  | { readonly kind: 'help' }
  | { readonly kind: 'version' }
  | { readonly kind: 'wrong'; readonly sentence: string };

const OPTIONS = {
  json: { type: 'boolean', default: false },
  describe: { type: 'boolean', default: false },
  help: { type: 'boolean', short: 'h', default: false },
  version: { type: 'boolean', default: false },
  window: { type: 'string', multiple: true },
  inlet: { type: 'string', multiple: true },
  outlet: { type: 'string', multiple: true },
  bank: { type: 'string' },
  columns: { type: 'string' },
  sheet: { type: 'string' },
  'trouble-codes': { type: 'string', multiple: true },
} as const;

/** Reads the words. Never throws. */
export function readArguments(words: readonly string[]): ReadArguments {
  try {
    return understand(words);
  } catch (fault) {
    if (fault instanceof WrongUsage) return { kind: 'wrong', sentence: fault.message };
    return { kind: 'wrong', sentence: parserSentence(fault) };
  }
}

function understand(words: readonly string[]): ReadArguments {
  const { values, positionals } = parseArgs({ args: [...words], options: OPTIONS, allowPositionals: true });
  if (values.help) return { kind: 'help' };
  if (values.version) return { kind: 'version' };
  if (positionals.length === 0) throw new WrongUsage('Name at least one capture, or - for standard input.');
  if (positionals.filter((name) => name === '-').length > 1) {
    throw new WrongUsage('Standard input can be read only once: give - a single time.');
  }
  return {
    kind: 'score',
    arguments: {
      captures: positionals,
      json: values.json,
      describe: values.describe,
      windows: values.window?.map(windowOf) ?? null,
      temperatures: pairsOf(values.inlet ?? [], values.outlet ?? []),
      bank: bankOf(values.bank),
      columns: values.columns ?? null,
      sheet: values.sheet === undefined ? null : sheetOf(values.sheet, values.describe),
      troubleCodes: codesOf(values['trouble-codes'] ?? []),
    },
  };
}

/** A flag or value that makes no sense; its message is the sentence that is shown. */
class WrongUsage extends Error {}

function windowOf(typed: string): TypedWindow {
  const window = parseWindow(typed);
  if (window !== null) return window;
  throw new WrongUsage(
    `--window ${typed} is no window: give its two ends with .. between them, in seconds (61.2..121.2) or by the clock (14:03:10..14:04:10).`,
  );
}

function pairsOf(inlets: readonly string[], outlets: readonly string[]) {
  if (inlets.length !== outlets.length) {
    throw new WrongUsage(
      `Every --inlet needs its --outlet: there are ${inlets.length} of the one and ${outlets.length} of the other.`,
    );
  }
  return inlets.map((inlet, i) => ({
    inlet: temperatureOf('--inlet', inlet),
    outlet: temperatureOf('--outlet', outlets[i] ?? ''),
  }));
}

function temperatureOf(flag: string, typed: string): Temperature {
  const temperature = parseTemperature(typed);
  if (temperature !== null) return temperature;
  throw new WrongUsage(
    `${flag} ${typed} is no temperature of a converter: give a number with F, C or K, such as 290F.`,
  );
}

function bankOf(typed: string | undefined): Bank {
  if (typed === undefined) return null;
  if (typed === '1' || typed === '2') return typed === '1' ? 1 : 2;
  throw new WrongUsage(`--bank ${typed} is no bank: give 1 or 2.`);
}

function sheetOf(path: string, describe: boolean): { path: string; ending: SheetEnding } {
  if (describe)
    throw new WrongUsage('--describe scores nothing, so there is nothing to put on a sheet: leave out one of the two.');
  const ending = SHEET_ENDINGS.find((one) => extname(path).toLowerCase() === `.${one}`);
  if (ending !== undefined) return { path, ending };
  throw new WrongUsage(
    `--sheet ${path} has an ending that is not known: use ${SHEET_ENDINGS.map((one) => `.${one}`).join(', ')}.`,
  );
}

function codesOf(typed: readonly string[]): readonly string[] {
  const { codes, refused } = parseTroubleCodes(typed.join(','));
  if (refused.length === 0) return codes;
  throw new WrongUsage(`--trouble-codes: ${refused.join(', ')} is no trouble code; one looks like P0420.`);
}

/** What the platform's own parser complains about, in our words. */
function parserSentence(fault: unknown): string {
  const message = fault instanceof Error ? fault.message : '';
  const flag = /'(--?[^'\s<=]+)/.exec(message)?.[1] ?? '';
  const code = typeof fault === 'object' && fault !== null && 'code' in fault ? fault.code : '';
  if (code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION') {
    const known = Object.keys(OPTIONS).map((name) => `--${name}`);
    return `There is no flag ${flag}; there are ${known.join(', ')}.`;
  }
  if (/does not take an argument/.test(message)) return `${flag} takes no value.`;
  return `${flag === '' ? 'A flag' : flag} needs a value behind it.`;
}
