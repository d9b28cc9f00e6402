import type { Behaviour } from './naming/behaviour.ts';

const MOST = 4096;
/** Left out on either side of the range. */
const OUTERMOST = 0.01;

/** What the values look like, judged on a spread of a few thousand of them. */
export function sampleBehaviour(values: Float32Array | Float64Array): Behaviour {
  const stride = Math.max(1, Math.floor(values.length / MOST));
  let picked = pick(values, stride);
  // A sparse channel may have none of its values on the stride.
  if (picked.length < 64 && stride > 1) picked = pick(values, 1);
  const finite = picked.length;
  if (finite === 0) return { finite: 0, min: 0, max: 0, median: 0, distinct: 0 };
  picked.sort();
  const at = (share: number): number => picked[Math.round((finite - 1) * share)] ?? 0;
  return {
    finite,
    min: at(finite < 20 ? 0 : OUTERMOST),
    max: at(finite < 20 ? 1 : 1 - OUTERMOST),
    median: at(0.5),
    distinct: distinctIn(picked),
  };
}

/** How many different numbers there are in a sorted array. */
function distinctIn(sorted: Float64Array): number {
  let distinct = 0;
  for (let i = 0; i < sorted.length; i++) if (i === 0 || sorted[i] !== sorted[i - 1]) distinct++;
  return distinct;
}

function pick(values: Float32Array | Float64Array, stride: number): Float64Array {
  const picked = new Float64Array(Math.ceil(values.length / stride));
  let length = 0;
  for (let i = 0; i < values.length; i += stride) {
    const value = values[i] ?? Number.NaN;
    if (Number.isFinite(value)) picked[length++] = value;
  }
  return picked.subarray(0, length);
}
