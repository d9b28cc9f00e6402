import type { Series } from '../capture/series.ts';
import { solveSymmetric } from '../statistics/solveSymmetric.ts';
import type { Hertz, Seconds, Share } from '../units/quantities.ts';

/** A stretch of time. */
interface Segment {
  readonly startS: Seconds;
  readonly endS: Seconds;
}

/** How one trace answers another at one frequency. */
export interface Transfer {
  /** Amplitude of `out` that goes with `into`, over the amplitude of `into`. */
  readonly gain: number;
  /** Share of the power of `out` at this frequency that goes with `into`, 0 to 1; about 1/segments by chance alone. */
  readonly coherence: Share;
  /** Time by which `out` runs behind, 0 up to one period: whole periods cannot be told. */
  readonly lagS: Seconds;
  readonly segments: number;
}

/** Waves of one segment: complex amplitude of both traces, the phase counted from time 0. */
export interface SegmentWaves {
  readonly into: Wave;
  readonly out: Wave;
}

interface Wave {
  readonly re: number;
  readonly im: number;
}

const LEAST_SAMPLES = 6;

/**
 * Complex amplitudes of two traces at one frequency in each segment, by least squares of a level, a slope, a sine and a
 * cosine, so that samples may lie anywhere and the two traces need not share theirs (an equivalent of Lomb's method with
 * a floating mean; Zechmeister and Kürster, A&A 496 (2009) 577). Segments with too few samples are left out.
 */
export function segmentWaves(into: Series, out: Series, hz: Hertz, segments: readonly Segment[]): SegmentWaves[] {
  const found: SegmentWaves[] = [];
  for (const { startS, endS } of segments) {
    const a = waveIn(into, hz, startS, endS);
    const b = waveIn(out, hz, startS, endS);
    if (a && b) found.push({ into: a, out: b });
  }
  return found;
}

/** Gain, coherence and lag over segments; `times` is how often each counts (for resampling), once each without it. */
export function transferOver(waves: readonly SegmentWaves[], hz: Hertz, times?: ArrayLike<number>): Transfer | null {
  let xx = 0;
  let yy = 0;
  let re = 0;
  let im = 0;
  let segments = 0;
  waves.forEach(({ into, out }, i) => {
    const weight = times ? (times[i] ?? 0) : 1;
    segments += weight;
    xx += weight * (into.re ** 2 + into.im ** 2);
    yy += weight * (out.re ** 2 + out.im ** 2);
    re += weight * (into.re * out.re + into.im * out.im);
    im += weight * (into.re * out.im - into.im * out.re);
  });
  if (segments < 1 || !(xx > 0)) return null;
  const cross = re * re + im * im;
  const turns = -Math.atan2(im, re) / (2 * Math.PI);
  return {
    gain: Math.sqrt(cross) / xx,
    coherence: yy > 0 ? Math.min(1, cross / (xx * yy)) : 0,
    lagS: (turns - Math.floor(turns)) / hz,
    segments,
  };
}

/** The wave exp(i 2 pi f t) a trace holds in a stretch, or null where too few samples lie in it. */
function waveIn({ timesS, values }: Series, hz: Hertz, startS: Seconds, endS: Seconds): Wave | null {
  const middle = (startS + endS) / 2;
  const half = (endS - startS) / 2;
  const omega = 2 * Math.PI * hz;
  // Normal equations of level, slope, cosine and sine.
  const a = new Float64Array(16);
  const b = new Float64Array(4);
  const row = new Float64Array(4);
  let count = 0;
  for (let i = firstIndex(timesS, startS); i < timesS.length && (timesS[i] ?? 0) < endS; i++) {
    const t = timesS[i] ?? 0;
    row[0] = 1;
    row[1] = (t - middle) / half;
    row[2] = Math.cos(omega * t);
    row[3] = Math.sin(omega * t);
    for (let j = 0; j < 4; j++) {
      b[j] = (b[j] ?? 0) + (row[j] ?? 0) * (values[i] ?? 0);
      for (let k = 0; k < 4; k++) a[4 * j + k] = (a[4 * j + k] ?? 0) + (row[j] ?? 0) * (row[k] ?? 0);
    }
    count++;
  }
  if (count < LEAST_SAMPLES) return null;
  const x = solveSymmetric(a, b);
  // values ~ c cos + s sin = Re((c - i s) exp(i w t))
  return { re: x[2] ?? 0, im: -(x[3] ?? 0) };
}

function firstIndex(timesS: Float64Array, timeS: Seconds): number {
  let low = 0;
  let high = timesS.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((timesS[middle] ?? 0) < timeS) low = middle + 1;
    else high = middle;
  }
  return low;
}
