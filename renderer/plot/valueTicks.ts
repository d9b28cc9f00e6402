// Where the ticks of a vertical axis stand: 1, 2, 5 by powers of ten.

/** Most ticks on one axis; fewer where the pane is low. */
const MOST_TICKS = 10;
/** The narrowest that labels may stand: so much is taken where a low pane would show a single value, which is no scale. */
const NARROWEST_PX = 16;

/**
 * The smallest step of 1, 2, 5 by powers of ten that keeps `spacing` px between ticks over `height` px; in a low pane,
 * less, so that there is more than one.
 */
export function valueStep(low: number, high: number, height: number, spacing: number): number {
  const least = height >= 2 * NARROWEST_PX ? 2 : 1;
  const most = Math.max(least, Math.min(MOST_TICKS, Math.floor(height / spacing)));
  return niceStep((high - low) / most);
}

/** The smallest of 1, 2, 5 by powers of ten that is not under `least`; 1 for nothing usable. */
export function niceStep(least: number): number {
  if (!(least > 0) || !Number.isFinite(least)) return 1;
  const power = Math.floor(Math.log10(least));
  for (const digit of [1, 2, 5]) {
    const step = Number(`${digit}e${power}`);
    if (step >= least * (1 - 1e-9)) return step;
  }
  return Number(`1e${power + 1}`);
}

/** Multiples of `step` from low to high, both included. */
export function valueTicks(low: number, high: number, step: number): number[] {
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  const perOne = step < 1 ? Math.round(1 / step) : null;
  const ticks: number[] = [];
  // `+ 0` turns a negative zero into a plain one, which no label should show.
  for (let i = first; i <= last; i++) ticks.push((perOne === null ? i * step : i / perOne) + 0);
  return ticks;
}

/** Digits after the decimal sign that tell two neighbouring ticks apart. */
export function stepDigits(step: number): number {
  return Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
}

/** `low` and `high` moved outwards to whole steps, so that an axis begins and ends on a tick. */
export function niceRange(low: number, high: number): readonly [number, number] {
  if (!(high - low > 1e-9 * Math.max(1e-3, Math.abs(low), Math.abs(high)))) return [low - 1, high + 1];
  const step = niceStep((high - low) / 5);
  return [Math.floor(low / step + 1e-9) * step, Math.ceil(high / step - 1e-9) * step];
}
