// A capture without a file: invented channels behind the same questions that the core's service answers. Views are made
// by looking at every sample, so that drawing can be checked against something that has no pyramid to be wrong in.

import type { CaptureSummary, ChannelSummary } from '../../core/bridge/coreMessages.ts';
import { type Bank, ROLE_FACTS, type Role } from '../../core/capture/roles.ts';
import type { TraceView } from '../../core/capture/traceView.ts';
import type { Stretch } from '../../core/windows/window.ts';
import type { TraceSource } from '../../renderer/plot/traceStackProps.ts';

export interface InventedChannel {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly bank: Bank;
  readonly sensor: number | null;
  readonly timesS: Float64Array;
  readonly values: Float32Array;
  readonly steps: boolean;
  readonly gapS: number;
}

/** The envelope or the samples of one channel over a stretch, by looking at each sample. */
export function viewOf(channel: InventedChannel, stretch: Stretch, buckets: number): TraceView {
  const { timesS, values } = channel;
  const first = countBefore(timesS, stretch.startS);
  const end = countBefore(timesS, stretch.endS + 1e-12);
  const common = { channelId: channel.id, ...stretch, steps: channel.steps, gapS: channel.gapS };
  const finite: number[] = [];
  for (let i = first; i < end; i++) if (Number.isFinite(values[i])) finite.push(i);
  if (finite.length <= buckets) {
    const low = Float32Array.from(finite, (i) => values[i] ?? Number.NaN);
    return { ...common, kind: 'samples', timesS: Float64Array.from(finite, (i) => timesS[i] ?? 0), low, high: low };
  }
  const widthS = (stretch.endS - stretch.startS) / buckets;
  const found = new Map<number, [number, number]>();
  for (const i of finite) {
    const bucket = Math.min(buckets - 1, Math.floor(((timesS[i] ?? 0) - stretch.startS) / widthS));
    const value = values[i] ?? Number.NaN;
    const sofar = found.get(bucket);
    if (sofar === undefined) found.set(bucket, [value, value]);
    else if (value < sofar[0]) sofar[0] = value;
    else if (value > sofar[1]) sofar[1] = value;
  }
  const filled = [...found.entries()];
  return {
    ...common,
    kind: 'envelope',
    timesS: Float64Array.from(filled, ([bucket]) => stretch.startS + (bucket + 0.5) * widthS),
    low: Float32Array.from(filled, ([, [low]]) => low),
    high: Float32Array.from(filled, ([, [, high]]) => high),
    gapS: Math.max(channel.gapS, 2.01 * widthS),
  };
}

export function syntheticCapture(name: string, channels: readonly InventedChannel[]): CaptureSummary {
  const durationS = Math.max(...channels.map(({ timesS }) => timesS[timesS.length - 1] ?? 0));
  return {
    key: name,
    sha256: '0'.repeat(64),
    name,
    bytes: 0,
    durationS,
    rows: Math.max(...channels.map(({ timesS }) => timesS.length)),
    startClock: '2031-05-06T14:02:26.0',
    channels: channels.map(summaryOf),
    warnings: [],
    layout: { id: 'invented', words: 'Invented for a test', headerKey: 'invented' },
  };
}

export function syntheticSource(channels: readonly InventedChannel[]): TraceSource {
  const byId = new Map(channels.map((channel) => [channel.id, channel]));
  const known = (ids: readonly string[]): InventedChannel[] =>
    ids.flatMap((id) => {
      const channel = byId.get(id);
      return channel === undefined ? [] : [channel];
    });
  return {
    views: async (ids, stretch, buckets) => known(ids).map((channel) => viewOf(channel, stretch, buckets)),
    valuesAt: async (ids, timeS) =>
      known(ids).map((channel) => {
        const at = countBefore(channel.timesS, timeS + 1e-9) - 1;
        const value = channel.values[at];
        if (value === undefined || !Number.isFinite(value))
          return { channelId: channel.id, sampleS: null, value: null };
        return { channelId: channel.id, sampleS: channel.timesS[at] ?? null, value };
      }),
    nextStop: async (id, fromS, direction, stop) => nextStop(byId.get(id), fromS, direction, stop),
    describe: async (ids, stretch) => known(ids).map((channel) => describe(channel, stretch)),
  };
}

function summaryOf(channel: InventedChannel): ChannelSummary {
  const finite = channel.values.filter(Number.isFinite);
  const span = (channel.timesS[channel.timesS.length - 1] ?? 0) - (channel.timesS[0] ?? 0);
  const rateHz = span > 0 ? (channel.timesS.length - 1) / span : 0;
  return {
    id: channel.id,
    name: channel.name,
    role: channel.role,
    bank: channel.bank,
    sensor: channel.sensor,
    unit: ROLE_FACTS[channel.role].unit,
    fileUnit: null,
    samples: channel.values.length,
    facts: {
      finite: finite.length,
      min: finite.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY),
      max: finite.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY),
      medianRateHz: rateHz,
      jitterS: 0,
      renewalRateHz: rateHz,
      resolution: 0.005,
    },
  };
}

function nextStop(
  channel: InventedChannel | undefined,
  fromS: number,
  direction: 1 | -1,
  stop: 'sample' | 'switch',
): number | null {
  if (channel === undefined) return null;
  const { timesS, values } = channel;
  let at = direction === 1 ? countBefore(timesS, fromS + 1e-9) : countBefore(timesS, fromS - 1e-9) - 1;
  if (stop === 'sample') return timesS[at] ?? null;
  for (; at > 0 && at < timesS.length; at += direction) {
    const rich = (values[at] ?? 0) > 0.45;
    if (rich !== (values[at - 1] ?? 0) > 0.45) return timesS[at] ?? null;
  }
  return null;
}

function describe(channel: InventedChannel, stretch: Stretch): string {
  const { low, high } = viewOf(channel, stretch, 1);
  const facts = ROLE_FACTS[channel.role];
  if (low.length === 0) return `${facts.words}: no sample in this stretch.`;
  const least = low.reduce((a, b) => Math.min(a, b));
  const most = high.reduce((a, b) => Math.max(a, b));
  return `${facts.words}: ${least.toFixed(facts.digits)} to ${most.toFixed(facts.digits)} ${facts.unit}.`;
}

function countBefore(timesS: Float64Array, timeS: number): number {
  let low = 0;
  let high = timesS.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((timesS[middle] ?? Number.NaN) < timeS) low = middle + 1;
    else high = middle;
  }
  return low;
}
