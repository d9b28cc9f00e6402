// The panes of a capture as a sheet shows them where no person has arranged any: the sensors of each bank over each
// other, engine speed, coolant.

import { banksOf, type Capture, findChannel } from '../../capture/capture.ts';
import type { Channel } from '../../capture/channel.ts';
import { buildPyramid } from '../../capture/pyramid.ts';
import { type Bank, ROLE_FACTS, type Role } from '../../capture/roles.ts';
import { viewOf } from '../../capture/viewOf.ts';
import type { Stretch } from '../../windows/window.ts';
import { roleWords } from '../words/terms.ts';
import type { PictureGuide, PicturePane } from './picture.ts';
import { niceStep } from './ticks.ts';

/** 0.45 V is the usual switch point (check 4.10); the hold band and the warm line are common practice, no source. */
const SWITCH_POINT: PictureGuide = { low: 0.45, high: 0.45, words: '0.45 V switch point' };
const HOLD_BAND: PictureGuide = { low: 2000, high: 2500, words: '2000 to 2500 1/min hold band' };
const WARM_LINE: PictureGuide = { low: 80, high: 80, words: '80 °C warm engine' };

/** Empty where the capture has none of these channels. `buckets` is the width of the panes in px. */
export function capturePanes(capture: Capture, stretch: Stretch, buckets: number): PicturePane[] {
  const panes: PicturePane[] = [];
  const add = (words: string, channels: readonly Channel[], scale: Scale, guides: readonly PictureGuide[]): void => {
    const [first] = channels;
    if (first === undefined) return;
    const traces = channels.map((channel) => traceOf(channel, stretch, buckets));
    panes.push({ words, unit: first.unit, scale: scaleOf(channels, scale), traces, guides });
  };
  for (const bank of [...banksOf(capture), null]) {
    const where = bank === null ? '' : `, bank ${bank}`;
    add(`Oxygen sensors${where}`, present(capture, ['upstreamO2', 'downstreamO2'], bank), [0, 1], [SWITCH_POINT]);
    add(`Upstream lambda${where}`, present(capture, ['upstreamLambda'], bank), [0.9, 1.1], []);
  }
  add('Engine speed', present(capture, ['rpm'], null), [0, 3000], [HOLD_BAND]);
  add('Coolant temperature', present(capture, ['coolant'], null), [60, 100], [WARM_LINE]);
  return panes;
}

const SHORT: Partial<Record<Role, string>> = { upstreamO2: 'Upstream', downstreamO2: 'Downstream' };

type Scale = readonly [number, number];

function present(capture: Capture, roles: readonly Role[], bank: Bank): Channel[] {
  return roles.map((role) => findChannel(capture, role, bank)).filter((channel) => channel !== null);
}

function traceOf(channel: Channel, { startS, endS }: Stretch, buckets: number) {
  const { role, bank, sensor } = channel;
  const view = viewOf(channel, buildPyramid(channel.values), startS, endS, buckets);
  const words = SHORT[role] ?? roleWords(role, bank);
  return { words, role, bank, sensor, view };
}

/** The usual scale, widened by whole steps to what the channels hold but not beyond what such a channel can carry. */
function scaleOf(channels: readonly Channel[], [low, high]: Scale): Scale {
  const { plausible } = ROLE_FACTS[channels[0]?.role ?? 'other'];
  const least = Math.max(plausible[0], Math.min(low, ...channels.map(({ facts }) => facts.min)));
  const most = Math.min(plausible[1], Math.max(high, ...channels.map(({ facts }) => facts.max)));
  const step = niceStep((high - low) / 5);
  return [Math.floor(least / step + 1e-9) * step, Math.ceil(most / step - 1e-9) * step];
}
