import { findUnit } from '../../units/findUnit.ts';
import { parseNumber } from './parseNumber.ts';

const RATE =
  /(?:rate|frequency|frequenz|abtastrate|abtastfrequenz|fréquence|frecuencia|échantillonnage|muestreo|sampling|sample\s*rate|fs)\b/i;
const STEP =
  /(?:interval|intervall|abtastzeit|abtastintervall|period|periode|période|periodo|intervalo|intervalle|delta\s*t|dt|Δt|step|increment|x\s*increment)\b/i;
const NUMBER_AND_UNIT = /(\d[\d.,]*(?:[eE][+-]?\d+)?)\s*([A-Za-zµ/]{0,9})/;

/**
 * Rows a second that the free text before the header tells, or null: "Sample rate: 100 Hz", "Interval;0,01;s".
 */
export function rateInPreamble(lines: readonly string[]): number | null {
  for (const line of lines) {
    // How fast a cable talks says nothing about rows.
    if (/baud|bit\s?rate|bit\/s/i.test(line)) continue;
    const rate = after(line, RATE);
    if (rate !== null) {
      const [value, unit] = rate;
      const row = unit === '' ? null : findUnit(unit);
      if (row === null || row.quantity === 'count') return unit === '' ? value : null;
      if (row.quantity === 'frequency') return (value * row.times) / row.over;
    }
    const step = after(line, STEP);
    if (step !== null) {
      const [value, unit] = step;
      const row = unit === '' ? null : findUnit(unit);
      if (row === null) return unit === '' && value < 10 ? 1 / value : null;
      if (row.quantity === 'time') return Number((row.over / (value * row.times)).toPrecision(12));
    }
  }
  return null;
}

function after(line: string, words: RegExp): readonly [number, string] | null {
  const at = words.exec(line.slice(0, 500));
  if (at === null) return null;
  const match = NUMBER_AND_UNIT.exec(line.slice(at.index + at[0].length).replace(/[;,\t|"](?=\s*[A-Za-zµ])/g, ' '));
  if (match?.[1] === undefined) return null;
  const text = match[1].replace(/[.,]$/, '');
  const whole = parseNumber(text, text.includes(',') ? ',' : '.');
  // Commas may also part cells: "SampleRate,100.0,100.0" says it for each channel.
  const value = Number.isNaN(whole) ? parseNumber(text.split(',')[0] ?? '', '.') : whole;
  return value > 0 ? [value, match[2] ?? ''] : null;
}
