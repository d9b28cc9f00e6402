import type { Channel } from '../capture/channel.ts';
import { SWITCH_BAND } from '../measures/switching.ts';
import type { Band } from '../signal/crossings.ts';

/** A wideband sensor has crossed stoichiometry when it left this band of lambda; common practice, no source. */
const LAMBDA_BAND: Band = { low: 0.995, high: 1.005 };

/** The band that an oxygen sensor's trace crosses when it switches, in the channel's unit; null for any other channel. */
export function switchBandOf({ role }: Channel): Band | null {
  if (role === 'upstreamO2' || role === 'downstreamO2') return SWITCH_BAND;
  return role === 'upstreamLambda' ? LAMBDA_BAND : null;
}
