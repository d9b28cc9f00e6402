import type { Channel } from '../capture/channel.ts';
import type { CaptureWarning } from '../capture/warnings.ts';
import { shownText } from './shownText.ts';

/** Written so much more often than renewed, a channel counts as held. */
const SHARE = 0.75;

/** Channels that repeat their last value until a new one arrives, told together where they do so alike. */
export function heldWarnings(channels: readonly Channel[]): CaptureWarning[] {
  const alike = new Map<string, Channel[]>();
  for (const channel of channels) {
    const { renewalRateHz, medianRateHz } = channel.facts;
    if (channel.role === 'other' || channel.role === 'fuelStatus') continue;
    if (!(renewalRateHz > 0 && renewalRateHz < medianRateHz * SHARE)) continue;
    const key = `at ${tidy(medianRateHz)} Hz but renewed at only about ${tidy(renewalRateHz)} Hz`;
    alike.set(key, [...(alike.get(key) ?? []), channel]);
  }
  return [...alike].map(([rates, held]) => {
    const names = held.map(({ name }) => `“${shownText(name, 60)}”`).join(', ');
    const detail = `${names} ${held.length === 1 ? 'is' : 'are'} written ${rates}; the rows between repeat the last value.`;
    return { id: 'heldValues', detail, row: null, count: held.length, repaired: false };
  });
}

function tidy(value: number): string {
  return String(Number(value.toPrecision(3)));
}
