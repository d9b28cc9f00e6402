import type { Series } from '../capture/series.ts';
import { moments } from '../statistics/moments.ts';
import type { Hertz, Share } from '../units/quantities.ts';

/**
 * Lomb's normalised periodogram at given frequencies, for samples at any times (Numerical Recipes in C, 13.8.4 and
 * 13.8.5; check 6.03): mean taken out, variance with n - 1, phase such that shifting all times changes nothing.
 * Same length as `frequencies`. A constant or shorter than 3 samples gives zeros; frequency 0 gives 0.
 */
export function lombScargle(series: Series, frequencies: readonly Hertz[]): Float64Array {
  const { timesS, values } = series;
  const { mean, deviation, count } = moments(values);
  const powers = new Float64Array(frequencies.length);
  if (count < 3 || !(deviation > 0)) return powers;
  const first = timesS[0] ?? 0;
  frequencies.forEach((frequency, k) => {
    if (!(frequency > 0)) return;
    const omega = 2 * Math.PI * frequency;
    let cs = 0;
    let sn = 0;
    let c2 = 0;
    let s2 = 0;
    for (let i = 0; i < count; i++) {
      const angle = omega * ((timesS[i] ?? 0) - first);
      const h = (values[i] ?? 0) - mean;
      cs += h * Math.cos(angle);
      sn += h * Math.sin(angle);
      c2 += Math.cos(2 * angle);
      s2 += Math.sin(2 * angle);
    }
    const tau = 0.5 * Math.atan2(s2, c2);
    const c = Math.cos(tau);
    const s = Math.sin(tau);
    const cosines = (count + Math.hypot(c2, s2)) / 2;
    const sines = (count - Math.hypot(c2, s2)) / 2;
    const a = cosines > 1e-9 * count ? (cs * c + sn * s) ** 2 / cosines : 0;
    const b = sines > 1e-9 * count ? (sn * c - cs * s) ** 2 / sines : 0;
    powers[k] = (a + b) / (2 * deviation * deviation);
  });
  return powers;
}

/**
 * Chance that pure noise reaches a power z somewhere among `independent` frequencies: 1 - (1 - exp(-z))^M, kept exact
 * for small chances (check 6.04).
 */
export function falseAlarm(power: number, independent: number): Share {
  return -Math.expm1(independent * Math.log1p(-Math.exp(-power)));
}
