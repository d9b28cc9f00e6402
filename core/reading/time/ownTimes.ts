import type { AsWritten } from '../../capture/repairs.ts';
import type { CaptureWarning } from '../../capture/warnings.ts';
import { mendTimes } from './mendTimes.ts';

/** Times of a group of channels in ascending order, and the way its values have to be put to match. */
export interface OwnTimes {
  readonly timesS: Float64Array;
  readonly warnings: readonly CaptureWarning[];
  /** A column of the group's values in the order of timesS; the column itself where nothing was moved. */
  arrange(values: Float64Array): Float64Array;
}

/**
 * Mends the times of channels that were read without rows: samples whose time is no number are left out, and times
 * that run back are put in order as mendTimes says, but for the repairs in `asWritten`. `timesS` may be changed.
 */
export function ownTimes(timesS: Float64Array, asWritten: AsWritten): OwnTimes {
  const kept: number[] = [];
  for (let i = 0; i < timesS.length; i++) if (Number.isFinite(timesS[i] ?? Number.NaN)) kept.push(i);
  const lost = timesS.length - kept.length;
  const finite = lost === 0 ? timesS : pick(timesS, kept);
  const mended = mendTimes(finite, { clock: false, coarse: false, asWritten, rowOf: () => null });
  const { order } = mended;
  const arrange = (values: Float64Array) => {
    const whole = lost === 0 ? values : pick(values, kept);
    return order === null ? whole : pick(whole, order);
  };
  return {
    timesS: mended.timesS,
    warnings: lost === 0 ? mended.warnings : [lostTimes(lost), ...mended.warnings],
    arrange,
  };
}

function pick(from: Float64Array, indices: ArrayLike<number>): Float64Array {
  const picked = new Float64Array(indices.length);
  for (let i = 0; i < picked.length; i++) picked[i] = from[indices[i] ?? 0] ?? Number.NaN;
  return picked;
}

function lostTimes(count: number): CaptureWarning {
  const what = count === 1 ? 'One sample has' : `${count} samples have`;
  const detail = `${what} no usable time, and so no place on the time axis; ${count === 1 ? 'it was' : 'they were'} left out.`;
  return { id: 'rowsSkipped', detail, row: null, count, repaired: false };
}
