import { type Edge, timeEdges } from '../signal/edges.ts';
import { remember } from '../signal/remember.ts';
import { median } from '../statistics/quantile.ts';
import type { Measure, SensorSeries, WindowData } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { frontVoltage } from './sensors.ts';
import { SWITCH_BAND } from './switching.ts';

/** Edges that must be timed before their median says something. */
const LEAST_EDGES = 4;

/** Edges of a sensor between 0.30 and 0.60 V. */
const edgesOf = remember((sensor: SensorSeries) => timeEdges(sensor.series, SWITCH_BAND));

/** Median time of the front sensor between 0.30 and 0.60 V one way (published limits: check 4.30). */
function edge(id: string, words: string, rising: boolean): Measure {
  return {
    id,
    words,
    unit: 's',
    digits: 3,
    needs: 'The front sensor as a voltage, fast enough for three values on an edge.',
    help: 'Time from 0.30 to 0.60 V or back. Under 0.1 s on a sound sensor; 0.137 and 0.144 s are printed as limits of one car.',
    compute: (data: WindowData) => {
      const { sensor, why } = frontVoltage(data);
      if (!sensor) return missing(id, why);
      const timed = edgesOf(sensor).edges.filter((one: Edge) => one.rising === rising);
      if (timed.length < LEAST_EDGES) return missing(id, 'Too few edges have three values on them to be timed.');
      return measured(id, median(timed.map(({ durationS }) => durationS)));
    },
  };
}

export const upstreamRiseS = edge('upstreamRiseS', 'Edge lean to rich, front', true);
export const upstreamFallS = edge('upstreamFallS', 'Edge rich to lean, front', false);
