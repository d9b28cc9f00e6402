import { lagSearch } from '../measures/lagSearch.ts';
import type { WindowData } from '../measures/measure.ts';
import { frontVoltage, LEAST_SAMPLES, rangeOf, rearVoltage, richShare } from '../measures/sensors.ts';
import { cutWindow } from '../measures/windowData.ts';
import { percent, round } from '../words/numbers.ts';
import { trimsOf } from './trimsOf.ts';

/** Two banks whose trims run away from each other are steered by each other's sensors. */
const APART = 30;
/** Shares of time rich at which one bank stays rich and the other lean. */
const RICH_END = 0.9;
const LEAN_END = 0.1;
/** The same for wideband sensors: no control on its own sensor leaves lambda so far out, on opposite sides at that. */
const RICH_LAMBDA = 0.9;
const LEAN_LAMBDA = 1.1;
/** A rear trace this much alike to the other bank's front one, and this much less to its own, belongs to that bank. */
const ALIKE = 0.35;
const MORE_ALIKE = 0.2;

/** The sentence that says how two banks run away from each other, or null where they do not or there is only one. */
export function banksRunApart(data: WindowData): string | null {
  const other = otherBank(data);
  if (!other) return null;
  const own = trimsOf(data.capture, data.bank, data.window);
  const theirs = trimsOf(data.capture, other.bank, data.window);
  const ours = (own.short ?? 0) + (own.long ?? 0);
  const others = (theirs.short ?? 0) + (theirs.long ?? 0);
  if (ours * others < 0 && Math.abs(ours - others) > APART)
    return `The trims run apart: ${round(ours, 0)} % here, ${round(others, 0)} % on the other bank.`;
  return voltagesApart(data, other) ?? lambdasApart(data, other);
}

function voltagesApart(own: WindowData, other: WindowData): string | null {
  const front = frontVoltage(own).sensor;
  const otherFront = frontVoltage(other).sensor;
  if (!front || !otherFront) return null;
  const [here, there] = [richShare(front), richShare(otherFront)];
  if (Math.max(here, there) < RICH_END || Math.min(here, there) > LEAN_END) return null;
  return `One bank stays at the rich end, the other at the lean end: rich for ${percent(here)} of the time here, for ${percent(there)} there.`;
}

function lambdasApart(own: WindowData, other: WindowData): string | null {
  const [here, there] = [own, other].map(({ upstream }) =>
    upstream?.channel.role === 'upstreamLambda' && upstream.series.values.length >= LEAST_SAMPLES
      ? rangeOf(upstream).middle
      : 1,
  );
  if (here === undefined || there === undefined) return null;
  if (Math.min(here, there) > RICH_LAMBDA || Math.max(here, there) < LEAN_LAMBDA) return null;
  return `One bank stays rich, the other lean: lambda ${round(here, 2)} here, ${round(there, 2)} there.`;
}

/**
 * The sentence that says that a rear trace of either bank follows the front one of the other bank and not its own, or
 * null. Two banks swing each by its own control, so what comes through a converter is alike to its own front only.
 */
export function followsOtherBank(data: WindowData): string | null {
  const other = otherBank(data);
  if (!other) return null;
  return crossed(data, other, 'this') ?? crossed(other, data, 'the other');
}

function crossed(own: WindowData, other: WindowData, whose: string): string | null {
  if (!rearVoltage(own).sensor || !frontVoltage(other).sensor) return null;
  const straight = lagSearch(own);
  const across = lagSearch({ ...own, upstream: other.upstream });
  if (!straight || !across || across.lagS < 0) return null;
  if (across.alike < ALIKE || across.alike - straight.alike < MORE_ALIKE) return null;
  return `The rear trace of ${whose} bank follows the front one across (correlation ${round(across.alike, 2)}) and not its own (${round(straight.alike, 2)}).`;
}

/** The same window of the other bank; null where the engine has one bank only. */
function otherBank({ capture, bank, window }: WindowData): WindowData | null {
  if (bank === null) return null;
  const other = bank === 1 ? 2 : 1;
  return capture.channels.some((channel) => channel.bank === other)
    ? cutWindow(capture, { ...window, bank: other }, other)
    : null;
}
