import { narrowRoom, wideRoom } from '../../capture/columnRoom.ts';
import { sampleCount, type TimeBase, timeAt } from '../../capture/timeBase.ts';

/** From this share of blank cells on, a channel is taken as polled less often than the rows, and gets its own times. */
const SPARSE_SHARE = 0.2;

/**
 * The samples of a channel, without its blanks where it has many: an instrument that asks for one item after the other
 * writes a row for each, and leaves the other cells blank. A channel with few blanks keeps them as NaN on the shared base.
 */
export function sparse(
  values: Float32Array | Float64Array,
  time: TimeBase,
  finite: number,
): { readonly values: Float32Array | Float64Array; readonly time: TimeBase } {
  if (finite === 0 || values.length - finite <= values.length * SPARSE_SHARE) return { values, time };
  const kept = values instanceof Float32Array ? narrowRoom(finite) : wideRoom(finite);
  const timesS = wideRoom(finite);
  let at = 0;
  for (let i = 0; i < sampleCount(time); i++) {
    const value = values[i] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    kept[at] = value;
    timesS[at] = timeAt(time, i);
    at++;
  }
  return { values: kept, time: { kind: 'listed', timesS } };
}
