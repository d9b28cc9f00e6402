// The last steps that all layouts share: roles, units, facts, warnings, the question to the person.

import { keepBlocks } from '../capture/blockExtremes.ts';
import type { Capture, LayoutFound } from '../capture/capture.ts';
import type { Channel } from '../capture/channel.ts';
import { channelFacts, type Range } from '../capture/channelFacts.ts';
import { inSharedRoom, wideInSharedRoom } from '../capture/columnRoom.ts';
import { type Bank, ROLE_FACTS, ROLES, type Role } from '../capture/roles.ts';
import { sampleCount, type TimeBase, timeAt } from '../capture/timeBase.ts';
import type { CaptureWarning } from '../capture/warnings.ts';
import type { ColumnChoice } from '../record/schema.ts';
import { findUnit, sameUnit } from '../units/findUnit.ts';
import { channelWarnings } from './channelWarnings.ts';
import { convertValues } from './convertValues.ts';
import { blankErrorNumbers } from './errorNumbers.ts';
import { gapWarnings } from './gapWarnings.ts';
import { heldWarnings } from './heldWarnings.ts';
import { type AssignedRole, assignRoles, targetUnit } from './naming/assignRoles.ts';
import { otherGuess } from './naming/roleGuess.ts';
import type { RawChannel } from './rawChannel.ts';
import { sampleBehaviour } from './sampleBehaviour.ts';
import { roundTime } from './time/timeBaseOf.ts';
import { vehicleWarnings } from './vehicleWarnings.ts';

/** What a layout has found. */
export interface RawCapture {
  readonly name: string;
  readonly bytes: number;
  readonly rows: number;
  readonly startClock: string | null;
  readonly channels: readonly RawChannel[];
  readonly warnings: readonly CaptureWarning[];
  readonly layout: LayoutFound;
  /** Line of a row, for warnings about gaps; null where rows have no lines. */
  rowOf(index: number): number | null;
}

/** A capture with the guess behind each channel, for the question. */
export interface FinishedCapture {
  readonly capture: Capture;
  /** One a raw channel, in their order; what the person chose is certain. */
  readonly guesses: readonly AssignedRole[];
}

/** Makes the capture. The raw channels' values are taken over and may be changed. */
export function finishCapture(given: RawCapture, choice: ColumnChoice | null): FinishedCapture {
  const blanked = given.channels.map(blankErrorNumbers);
  const raw = { ...given, channels: blanked.map(({ channel }) => channel) };
  const behaviours = raw.channels.map(({ values }) => sampleBehaviour(values));
  const guessed = assignRoles(raw.channels, behaviours);
  const choices = raw.channels.map((one) => chosen(one, choice));
  const guesses = guessed.map((guess, i) => choices[i] ?? yielding(guess, choices));
  const channels: Channel[] = [];
  const warnings = [...raw.warnings, ...blanked.flatMap((one) => one.warnings)];
  const sharedTime = timesInSharedRoom();
  raw.channels.forEach((one, i) => {
    const guess = guesses[i];
    if (guess === undefined || isIgnored(one, choice)) return;
    const { unit, values, range } = inRoleUnit({ ...one, values: inSharedRoom(one.values) }, guess);
    const time = sharedTime(one.time);
    const facts = channelFacts(time, values, range);
    // The same values that were read, in the same unit.
    if (range !== undefined && one.blocks !== undefined) keepBlocks(values, one.blocks);
    const channel: Channel = {
      id: `c${channels.length}`,
      // The whole heading, as the file names it; the part without the unit was for recognising it.
      name: one.heading === undefined || one.heading === '' ? one.name : one.heading,
      role: guess.role,
      bank: guess.bank,
      sensor: guess.sensor,
      unit,
      fileUnit: one.unit,
      time,
      values,
      facts,
    };
    channels.push(channel);
    warnings.push(...channelWarnings(channel, guess));
  });
  warnings.push(...vehicleWarnings(channels), ...heldWarnings(channels), ...gapWarnings(channels, raw.rows, raw.rowOf));
  const capture: Capture = {
    name: raw.name,
    bytes: raw.bytes,
    durationS: durationOf(channels),
    rows: raw.rows,
    startClock: raw.startClock,
    channels,
    warnings,
    layout: raw.layout,
  };
  return { capture, guesses };
}

/** Gives the same base for the same base, so that channels that were sampled together go on sharing one. */
function timesInSharedRoom(): (time: TimeBase) => TimeBase {
  const known = new Map<TimeBase, TimeBase>();
  return (time) => {
    if (time.kind === 'regular') return time;
    const shared = known.get(time) ?? { kind: 'listed', timesS: wideInSharedRoom(time.timesS) };
    known.set(time, shared);
    return shared;
  };
}

interface InUnit {
  readonly unit: string;
  readonly values: Float32Array | Float64Array;
  readonly range: Range | undefined;
}

/** Values in the role's unit. A role whose unit does not fit the file's is left as it is, in the file's unit. */
function inRoleUnit(one: RawChannel, guess: AssignedRole): InUnit {
  const { values, decimals, range } = one;
  if (guess.role === 'other') return { unit: otherUnit(one.unit), values, range };
  const own = ROLE_FACTS[guess.role].unit;
  const from = guess.unit ?? own;
  if (from === own || sameUnit(from, targetUnit(guess.role))) return { unit: own, values, range };
  const fits = convertValues(values, decimals, from, targetUnit(guess.role));
  return { unit: fits ? own : (one.unit ?? own), values, range: undefined };
}

function otherUnit(unit: string | null): string {
  if (unit === null) return '1';
  return findUnit(unit)?.symbol ?? unit;
}

function isIgnored(one: RawChannel, choice: ColumnChoice | null): boolean {
  return choice?.columns.find(({ index }) => index === one.index)?.role === 'ignore';
}

/** What the person chose for a channel, as a guess that is certain. */
function chosen(one: RawChannel | undefined, choice: ColumnChoice | null): AssignedRole | null {
  const column = one === undefined ? undefined : choice?.columns.find(({ index }) => index === one.index);
  const role = ROLES.find((known) => known === column?.role);
  if (one === undefined || column === undefined || role === undefined) return null;
  return {
    role,
    bank: bankFor(role, column.bank),
    sensor:
      column.sensor ?? (role === 'downstreamO2' ? 2 : role === 'upstreamO2' || role === 'upstreamLambda' ? 1 : null),
    unit: column.unit ?? one.unit,
    unitGuessed: false,
    score: 2,
    certain: true,
    because: 'chosen by hand',
    questioned: null,
  };
}

/** A guess, unless a person has chosen another column for the same role. */
function yielding(guess: AssignedRole, choices: readonly (AssignedRole | null)[]): AssignedRole {
  const { role, bank, sensor } = guess;
  const taken = choices.some((one) => one?.role === role && one.bank === bank && one.sensor === sensor);
  if (role === 'other' || !taken) return guess;
  return { ...otherGuess(guess.unit, 'another column was chosen for it'), questioned: null };
}

function bankFor(role: Role, bank: Bank): Bank {
  return ROLE_FACTS[role].perBank ? (bank ?? 1) : null;
}

function durationOf(channels: readonly Channel[]): number {
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  for (const { time } of channels) {
    const count = sampleCount(time);
    if (count === 0) continue;
    first = Math.min(first, timeAt(time, 0));
    last = Math.max(last, timeAt(time, count - 1));
  }
  return last > first ? roundTime(last - first) : 0;
}
