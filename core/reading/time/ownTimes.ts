import type { AsWritten } from '../../capture/repairs.ts';
import type { CaptureWarning } from '../../capture/warnings.ts';
import { reordered } from '../text/inOrder.ts';
import { mendTimes } from './mendTimes.ts';

/** Times of a group of channels in ascending order, and the way its values have to be put to match. */
export interface OwnTimes {
  readonly timesS: Float64Array;
  readonly warnings: readonly CaptureWarning[];
  /** A column of the group's values in the order of timesS; the column itself where nothing was moved. */
  arrange(values: Float32Array | Float64Array): Float32Array | Float64Array;
}

/**
 * Mends the times of channels that were read without rows: samples whose time is no number are left out, and times
 * that run back are put in order as mendTimes says, but for the repairs in `asWritten`. `timesS` may be changed.
 */
export function ownTimes(timesS: Float64Array, asWritten: AsWritten): OwnTimes {
  const kept = finitePlaces(timesS);
  const lost = kept === null ? 0 : timesS.length - kept.length;
  const finite = kept === null ? timesS : Float64Array.from(kept, (place) => timesS[place] ?? Number.NaN);
  const mended = mendTimes(finite, { clock: null, coarse: false, asWritten, rowOf: () => null });
  const { order } = mended;
  const arrange = (values: Float32Array | Float64Array) => {
    const whole = kept === null ? values : reordered(values, kept);
    return order === null ? whole : reordered(whole, order);
  };
  return {
    timesS: mended.timesS,
    warnings: lost === 0 ? mended.warnings : [lostTimes(lost), ...mended.warnings],
    arrange,
  };
}

/** Places of the times that are numbers; null where all of them are. */
function finitePlaces(timesS: Float64Array): Uint32Array | null {
  let finite = 0;
  for (let i = 0; i < timesS.length; i++) if (Number.isFinite(timesS[i] ?? Number.NaN)) finite++;
  if (finite === timesS.length) return null;
  const places = new Uint32Array(finite);
  let at = 0;
  for (let i = 0; i < timesS.length; i++) if (Number.isFinite(timesS[i] ?? Number.NaN)) places[at++] = i;
  return places;
}

function lostTimes(count: number): CaptureWarning {
  const what = count === 1 ? 'One sample has' : `${count} samples have`;
  const detail = `${what} no usable time, and so no place on the time axis; ${count === 1 ? 'it was' : 'they were'} left out.`;
  return { id: 'rowsSkipped', detail, row: null, count, repaired: false };
}
