import { useStore } from 'zustand';
import type { Finding } from '../../core/findings/finding.ts';
import { useProgram } from '../program/programContext.ts';
import { themeOf } from '../state/settingsStore.ts';
import { TRACE_COLOURS, traceWidth } from '../style/traceColours.ts';
import { FindingSign } from '../widgets/Sign.tsx';
import { STRIP_FROM_S, STRIP_TO_S, STRIPS, type StripTraces } from './stripTraces.ts';

const WIDTH = 600;
const HEIGHT = 120;

/** A strip of recorder paper with what it is all about: two sample drives side by side, one that stores and one not. */
export function StartStrip() {
  return (
    <div className="startStrip">
      <Half
        finding="notStoring"
        traces={STRIPS.notStoring}
        words="The rear sensor follows the front one: this converter does not store oxygen."
      />
      <Half
        finding="storing"
        traces={STRIPS.storing}
        words="The rear sensor stays calm while the front one switches: this converter stores."
      />
    </div>
  );
}

interface HalfProps {
  readonly finding: Finding;
  readonly traces: StripTraces;
  readonly words: string;
}

function Half({ finding, traces, words }: HalfProps) {
  const { settings } = useProgram();
  const theme = useStore(settings, themeOf);
  return (
    <figure>
      <svg
        className="stripPaper"
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        preserveAspectRatio="none"
        role="img"
        aria-label="Twelve seconds of an invented drive: front sensor thin, rear sensor heavy, 0 to 1 V"
      >
        <path className="stripGrid" d={GRID} />
        <path
          d={pathOf(traces.timesS, traces.frontV)}
          stroke={TRACE_COLOURS.upstreamO2[theme]}
          strokeWidth={traceWidth('upstreamO2')}
        />
        <path
          d={pathOf(traces.timesS, traces.rearV)}
          stroke={TRACE_COLOURS.downstreamO2[theme]}
          strokeWidth={traceWidth('downstreamO2')}
        />
      </svg>
      <figcaption>
        <FindingSign finding={finding} size={22} />
        {words}
      </figcaption>
    </figure>
  );
}

/** A line each second and each tenth of a volt. */
const GRID = [
  ...Array.from({ length: STRIP_TO_S - STRIP_FROM_S + 1 }, (_, s) => `M${xOf(STRIP_FROM_S + s)} 0V${HEIGHT}`),
  ...Array.from({ length: 11 }, (_, tenth) => `M0 ${yOf(tenth / 10)}H${WIDTH}`),
].join('');

function pathOf(timesS: readonly number[], volts: readonly number[]): string {
  return timesS.map((timeS, index) => `${index === 0 ? 'M' : 'L'}${xOf(timeS)} ${yOf(volts[index] ?? 0)}`).join('');
}

function xOf(timeS: number): number {
  return Math.round(((timeS - STRIP_FROM_S) / (STRIP_TO_S - STRIP_FROM_S)) * WIDTH * 10) / 10;
}

function yOf(volts: number): number {
  return Math.round((1 - volts) * HEIGHT * 10) / 10;
}
