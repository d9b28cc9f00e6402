import type { RecordedChannel, Recording } from '../instruments/recording.ts';

/** How a table is written as text. All channels share their rows. */
export interface TextLayout {
  readonly delimiter: string;
  readonly decimal: '.' | ',';
  readonly lineEnd: '\n' | '\r\n';
  /** Free lines ahead of the header. */
  readonly before: readonly string[];
  readonly timeHead: string;
  readonly timeUnit: string;
  /** Where the units stand: in a row below the names, or in brackets behind them. */
  readonly units: 'row' | 'brackets';
  writeTime(timeS: number): string;
  readonly columns: readonly TextColumn[];
}

export interface TextColumn {
  readonly head: string;
  readonly unit: string;
  readonly digits: number;
  /** For columns that are not written as a plain number; gets the value in the role's unit. */
  write?(value: number): string;
}

/** The text of a recording, one column of the layout for each channel in the same order. */
export function writeText(recording: Recording, layout: TextLayout): string {
  const lines: string[] = [...layout.before, ...headerLines(layout)];
  const times = recording.channels[0]?.timesS ?? new Float64Array(0);
  const writers = layout.columns.map((column, k) => cellWriter(column, recording.channels[k], layout.decimal));
  for (let i = 0; i < times.length; i++) {
    let line = layout.writeTime(times[i] ?? 0);
    for (const write of writers) line += layout.delimiter + write(i);
    lines.push(line);
  }
  return lines.join(layout.lineEnd) + layout.lineEnd;
}

function headerLines(layout: TextLayout): string[] {
  const cells = [{ head: layout.timeHead, unit: layout.timeUnit }, ...layout.columns];
  if (layout.units === 'row') {
    return [cells.map(({ head }) => head).join(layout.delimiter), cells.map(({ unit }) => unit).join(layout.delimiter)];
  }
  return [cells.map(({ head, unit }) => (unit === '' ? head : `${head} (${unit})`)).join(layout.delimiter)];
}

function cellWriter(column: TextColumn, channel: RecordedChannel | undefined, decimal: string): (i: number) => string {
  if (!channel) throw new Error(`The column "${column.head}" has no channel.`);
  return (i) => {
    const value = channel.values[i] ?? Number.NaN;
    if (!Number.isFinite(value)) return '';
    if (column.write) return column.write(value);
    const text = value.toFixed(column.digits);
    const plain = Number(text) === 0 ? (0).toFixed(column.digits) : text;
    return decimal === ',' ? plain.replace('.', ',') : plain;
  };
}

/** A clock time of the day as hours, minutes, seconds and `digits` decimals. */
export function clockText(secondsOfDay: number, digits: number, decimal: '.' | ','): string {
  const scale = 10 ** digits;
  const ticks = Math.round(secondsOfDay * scale);
  const whole = Math.floor(ticks / scale);
  const two = (n: number) => String(n).padStart(2, '0');
  const fraction = String(ticks % scale).padStart(digits, '0');
  return `${two(Math.floor(whole / 3600))}:${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}${decimal}${fraction}`;
}
