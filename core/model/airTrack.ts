import { banksOf } from '../capture/capture.ts';
import type { GramsPerSecond, Seconds } from '../units/quantities.ts';
import { engineTrack } from '../windows/engineTrack.ts';
import type { FitData } from './fit.ts';

/** Air through the bank at even steps. `recorded` is false where it was worked out for a two-litre engine. */
export interface AirTrack {
  readonly airGS: Float64Array;
  readonly recorded: boolean;
}

/** Displacement taken where no air flow was recorded: capacities then mean "as if it had two litres". */
const USUAL_LITRES = 2;
/** Intake air at 25 °C, g/L. */
const AIR_DENSITY = 1.184;
/** Calculated load taken where none was recorded, per cent: an unloaded engine. */
const USUAL_LOAD = 22;
const USUAL_RPM = 2000;

/**
 * Air flow of one bank at `count` moments from startS on: the recorded mass air flow over the number of banks; else
 * from load and speed, one filling of the displacement every second turn; else from speed alone; else constant.
 * Never below 0.5 g/s: an engine that runs takes that much.
 */
export function airTrack(data: FitData, startS: Seconds, stepS: Seconds, count: number): AirTrack {
  const track = engineTrack(data.capture);
  const banks = Math.max(1, banksOf(data.capture).length);
  const { maf, load, rpm } = track.of;
  const recorded = maf?.some((value) => value > 0) ?? false;
  const airGS = new Float64Array(count);
  let last: GramsPerSecond = airOf(USUAL_RPM, USUAL_LOAD);
  for (let k = 0; k < count; k++) {
    const at = (startS + k * stepS) / track.stepS;
    const flow = recorded
      ? between(maf, at)
      : airOf(or(between(rpm, at), USUAL_RPM), or(between(load, at), USUAL_LOAD));
    if (Number.isFinite(flow)) last = flow;
    airGS[k] = Math.max(0.5, last / banks);
  }
  return { airGS, recorded };
}

function airOf(rpm: number, load: number): GramsPerSecond {
  return (USUAL_LITRES * AIR_DENSITY * rpm * load) / 12_000;
}

function or(value: number, usual: number): number {
  return Number.isFinite(value) ? value : usual;
}

/** Straight between two steps of a track; the nearer one where the other is missing; NaN where both are. */
function between(values: Float32Array | null, place: number): number {
  if (!values) return Number.NaN;
  const index = Math.max(0, Math.min(values.length - 1, Math.floor(place)));
  const low = values[index] ?? Number.NaN;
  const high = values[Math.min(values.length - 1, index + 1)] ?? Number.NaN;
  if (!Number.isFinite(low) || !Number.isFinite(high)) return Number.isFinite(low) ? low : high;
  return low + (high - low) * Math.max(0, Math.min(1, place - index));
}
