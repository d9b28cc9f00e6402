import type { Capture } from '../capture/capture.ts';
import type { Channel } from '../capture/channel.ts';
import { channelFacts } from '../capture/channelFacts.ts';
import { ROLE_FACTS } from '../capture/roles.ts';
import type { TimeBase } from '../capture/timeBase.ts';
import type { RecordedChannel, Recording } from './instruments/recording.ts';

/**
 * A recording as the Capture that reading its text would give: missing values NaN, channels of one row on one base,
 * time counted from the first sample of any channel, facts measured.
 */
export function asCapture(recording: Recording, name: string): Capture {
  const startS = Math.min(...recording.channels.map(({ timesS }) => timesS[0] ?? Number.POSITIVE_INFINITY));
  const endS = Math.max(...recording.channels.map(({ timesS }) => timesS[timesS.length - 1] ?? 0));
  const bases = new Map<Float64Array, TimeBase>();
  const channels = recording.channels.map((one, k) => asChannel(one, k, baseOf(one.timesS, startS, bases)));
  return {
    name,
    bytes: 0,
    durationS: endS - startS,
    rows: recording.channels[0]?.timesS.length ?? 0,
    startClock: null,
    channels,
    warnings: [],
    layout: { id: 'simulated', words: 'Invented by the simulation.', headerKey: name },
  };
}

function baseOf(timesS: Float64Array, startS: number, bases: Map<Float64Array, TimeBase>): TimeBase {
  const known = bases.get(timesS);
  if (known) return known;
  const base: TimeBase = { kind: 'listed', timesS: timesS.map((timeS) => timeS - startS) };
  bases.set(timesS, base);
  return base;
}

function asChannel({ signal, values }: RecordedChannel, index: number, time: TimeBase): Channel {
  const { unit, words } = ROLE_FACTS[signal.role];
  const bank = signal.bank === null ? '' : ` B${signal.bank}${signal.sensor === null ? '' : `S${signal.sensor}`}`;
  return {
    id: `c${index}`,
    name: `${words}${bank}`,
    role: signal.role,
    bank: signal.bank,
    sensor: signal.sensor,
    unit,
    fileUnit: unit,
    time,
    values,
    facts: channelFacts(time, values),
  };
}
