import type { WindowData } from '../measures/measure.ts';
import { renewalRate } from '../measures/sensors.ts';
import { median } from '../statistics/quantile.ts';
import { engineTrack, trackedBetween } from '../windows/engineTrack.ts';
import { round } from '../words/numbers.ts';
import type { Unlike } from './comparison.ts';

/** What two windows are compared by before their measures are: a number of each, and how far apart they may lie. */
interface Likeness {
  readonly id: string;
  readonly words: string;
  readonly unit: string;
  readonly digits: number;
  of(data: WindowData): number | null;
  alike(first: number, second: number): boolean;
}

const within =
  (least: number, share: number) =>
  (a: number, b: number): boolean =>
    Math.abs(a - b) <= Math.max(least, share * Math.max(Math.abs(a), Math.abs(b)));

function tracked(quantity: 'rpm' | 'coolant' | 'maf' | 'load' | 'speed'): (data: WindowData) => number | null {
  return ({ capture, window }) => {
    const values = trackedBetween(engineTrack(capture), quantity, window.startS, window.endS);
    return values.length > 0 ? median(values) : null;
  };
}

const rate = (which: 'upstream' | 'downstream') => (data: WindowData) => {
  const sensor = data[which];
  return sensor ? renewalRate(sensor.channel) : null;
};

/** The same test is the same speed, temperature, instrument and length (common practice, no source). */
const LIKENESSES: readonly Likeness[] = [
  { id: 'rpm', words: 'engine speed', unit: '1/min', digits: 0, of: tracked('rpm'), alike: within(200, 0.1) },
  { id: 'speed', words: 'vehicle speed', unit: 'km/h', digits: 0, of: tracked('speed'), alike: within(10, 0.15) },
  { id: 'coolant', words: 'coolant', unit: '°C', digits: 0, of: tracked('coolant'), alike: within(10, 0) },
  { id: 'maf', words: 'air flow', unit: 'g/s', digits: 1, of: tracked('maf'), alike: within(1, 0.2) },
  { id: 'rate', words: 'values a second, front', unit: '', digits: 1, of: rate('upstream'), alike: within(0.2, 0.35) },
  {
    id: 'rearRate',
    words: 'values a second, rear',
    unit: '',
    digits: 1,
    of: rate('downstream'),
    alike: within(0.2, 0.35),
  },
  {
    id: 'length',
    words: 'length',
    unit: 's',
    digits: 0,
    of: ({ window }) => window.endS - window.startS,
    alike: within(10, 0.4),
  },
];

/** What was not alike between two windows; what one of them did not record is not alike either. */
export function unlikeBetween(first: WindowData, second: WindowData): Unlike[] {
  const unlike: Unlike[] = [];
  if (first.window.kind !== second.window.kind)
    unlike.push({ id: 'kind', words: `kind of window: ${first.window.kind} against ${second.window.kind}` });
  if (first.upstream && second.upstream && first.upstream.channel.role !== second.upstream.channel.role)
    unlike.push({ id: 'frontKind', words: 'front sensor: a switching one against a wideband one' });
  for (const { id, words, unit, digits, of, alike } of LIKENESSES) {
    const a = of(first);
    const b = of(second);
    if (a === null && b === null) continue;
    if (a === null || b === null)
      unlike.push({ id, words: `${words}: recorded in the ${a === null ? 'second' : 'first'} only` });
    else if (!alike(a, b))
      unlike.push({ id, words: `${words}: ${round(a, digits)} against ${round(b, digits)} ${unit}`.trim() });
  }
  return unlike;
}
