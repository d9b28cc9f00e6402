import { blockInterval, sumOver } from './blocks.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { pathOf } from './pathOf.ts';
import { frontBlocks, rearBlocks } from './sensorBlocks.ts';
import { bothVoltages, renewalRate } from './sensors.ts';

/** Length of the rear trace over length of the front one, in volts only: time is no part of it (checks 3.03, 3.41). */
export const pathRatio: Measure = {
  id: 'pathRatio',
  words: 'Path, rear over front',
  unit: '1',
  digits: 2,
  needs: 'Both sensors as voltages, recorded at about the same rate.',
  help: 'How far the rear trace travels up and down compared with the front one. About 0.2 is printed for good converters, near 1 for none.',
  compute(data) {
    const both = bothVoltages(data);
    if (both.why !== null) return missing(this.id, both.why);
    const rates = renewalRate(both.front.channel) / renewalRate(both.rear.channel);
    if (rates > 2.5 || rates < 0.4)
      return missing(
        this.id,
        'The two sensors were recorded at too different rates to compare the lengths of their traces.',
      );
    const value = pathOf(both.rear) / pathOf(both.front);
    const [ahead, behind] = [frontBlocks(data)?.path, rearBlocks(data)?.path];
    const interval = ahead && behind ? blockInterval(data, (t) => sumOver(t, behind) / sumOver(t, ahead)) : null;
    return measured(this.id, value, interval);
  },
};
