import { type Capture, findChannel } from '../capture/capture.ts';
import type { Bank } from '../capture/roles.ts';
import { seriesOf } from '../capture/series.ts';
import { moments } from '../statistics/moments.ts';
import type { Percent } from '../units/quantities.ts';
import type { Stretch } from '../windows/window.ts';

/** Mean fuel trims over a stretch; null where not recorded. Positive adds fuel (check 1.06). */
export interface Trims {
  readonly short: Percent | null;
  readonly long: Percent | null;
}

/** Means of the trims of a bank over a stretch; a trim without a bank stands for the only one there is. */
export function trimsOf(capture: Capture, bank: Bank, { startS, endS }: Stretch): Trims {
  const mean = (role: 'stft' | 'ltft'): Percent | null => {
    const channel = findChannel(capture, role, bank) ?? findChannel(capture, role, null);
    if (!channel) return null;
    const { values } = seriesOf(channel, startS, endS);
    return values.length > 0 ? moments(values).mean : null;
  };
  return { short: mean('stft'), long: mean('ltft') };
}
