// A small capture made of waves, for tests that need one but do not read a file.

import type { Capture } from '../../core/capture/capture.ts';
import type { Channel } from '../../core/capture/channel.ts';
import { channelFacts } from '../../core/capture/channelFacts.ts';
import { type Bank, ROLE_FACTS, type Role } from '../../core/capture/roles.ts';

export interface MadeChannel {
  readonly role: Role;
  readonly bank?: Bank;
  readonly name?: string;
  readonly value: (timeS: number) => number;
}

/** `durationS` long at `rateHz`, from second 0. */
export function madeCapture(
  channels: readonly MadeChannel[],
  { durationS = 120, rateHz = 10, startClock = null, name = 'made.csv' }: MadeOptions = {},
): Capture {
  const length = Math.round(durationS * rateHz) + 1;
  const time = { kind: 'regular', startS: 0, stepS: 1 / rateHz, length } as const;
  return {
    name,
    bytes: length * 20,
    durationS,
    rows: length,
    startClock,
    channels: channels.map(({ role, bank = null, name: channelName = role, value }, i): Channel => {
      const values = Float64Array.from({ length }, (_, k) => value(k / rateHz));
      return {
        id: `c${i}`,
        name: channelName,
        role,
        bank,
        sensor: role === 'upstreamO2' ? 1 : role === 'downstreamO2' ? 2 : null,
        unit: ROLE_FACTS[role].unit,
        fileUnit: ROLE_FACTS[role].unit,
        time,
        values,
        facts: channelFacts(time, values),
      };
    }),
    warnings: [],
    layout: { id: 'made', words: 'Made for a test', headerKey: 'made' },
  };
}

interface MadeOptions {
  readonly durationS?: number;
  readonly rateHz?: number;
  readonly startClock?: string | null;
  readonly name?: string;
}

/** A held engine at 2300 1/min, its front sensor switching once a second; the rear one as given. */
export function heldEngine(rear: (timeS: number) => number, options: MadeOptions = {}): Capture {
  return madeCapture(
    [
      { role: 'upstreamO2', bank: 1, name: 'front', value: (timeS) => 0.45 + 0.4 * Math.sin(2 * Math.PI * timeS) },
      { role: 'downstreamO2', bank: 1, name: 'rear', value: rear },
      { role: 'rpm', value: () => 2300 },
      { role: 'coolant', value: () => 90 },
    ],
    options,
  );
}
