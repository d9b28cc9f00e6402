import { type Edge, timeEdges } from '../signal/edges.ts';
import { remember } from '../signal/remember.ts';
import { medianInterval } from '../statistics/exactIntervals.ts';
import { median } from '../statistics/quantile.ts';
import type { Measure, SensorSeries, WindowData } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { frontVoltage, rearVoltage } from './sensors.ts';
import { SWITCH_BAND } from './switching.ts';

/** Edges that must be timed before their median says something. */
const LEAST_EDGES = 4;

/** Edges of a sensor between 0.30 and 0.60 V. */
const edgesOf = remember((sensor: SensorSeries) => timeEdges(sensor.series, SWITCH_BAND));

/** Median time of a sensor between 0.30 and 0.60 V one way (published limits: check 4.30). Interval: order statistics. */
function edge(id: string, words: string, which: 'front' | 'rear', rising: boolean): Measure {
  return {
    id,
    words,
    unit: 's',
    digits: 3,
    needs: `The ${which} sensor as a voltage, fast enough for two values between 0.30 and 0.60 V.`,
    help: 'Time from 0.30 to 0.60 V or back. Under 0.1 s on a sound front sensor; 0.137 and 0.144 s are printed as limits of one car.',
    compute: (data: WindowData) => {
      const { sensor, why } = which === 'front' ? frontVoltage(data) : rearVoltage(data);
      if (!sensor) return missing(id, why);
      const { edges, untimed } = edgesOf(sensor);
      const times = edges.filter((one: Edge) => one.rising === rising).map(({ durationS }) => durationS);
      // Where most edges are too quick for the instrument, the few that were timed are the slow ones, or chance.
      if (times.length < LEAST_EDGES || untimed > edges.length)
        return missing(id, 'Too few edges have values enough on them to be timed.');
      return measured(id, median(times), medianInterval(Float64Array.from(times).sort()));
    },
  };
}

export const upstreamRiseS = edge('upstreamRiseS', 'Edge lean to rich, front', 'front', true);
export const upstreamFallS = edge('upstreamFallS', 'Edge rich to lean, front', 'front', false);
export const downstreamRiseS = edge('downstreamRiseS', 'Edge lean to rich, rear', 'rear', true);
export const downstreamFallS = edge('downstreamFallS', 'Edge rich to lean, rear', 'rear', false);
