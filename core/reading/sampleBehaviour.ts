import type { Behaviour } from './naming/behaviour.ts';

const MOST = 4096;

/** What the values look like; minimum and maximum over all, median and distinct values over a spread of a few thousand. */
export function sampleBehaviour(values: Float32Array | Float64Array): Behaviour {
  let finite = 0;
  let min = Number.POSITIVE_INFINITY;
  let max = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] ?? Number.NaN;
    if (value < min) min = value;
    if (value > max) max = value;
    if (!Number.isNaN(value)) finite++;
  }
  if (finite === 0) return { finite: 0, min: 0, max: 0, median: 0, distinct: 0 };
  const stride = Math.max(1, Math.floor(finite / MOST));
  const picked: number[] = [];
  let seen = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    if (seen++ % stride === 0) picked.push(value);
  }
  picked.sort((a, b) => a - b);
  return { finite, min, max, median: picked[picked.length >> 1] ?? 0, distinct: new Set(picked).size };
}
