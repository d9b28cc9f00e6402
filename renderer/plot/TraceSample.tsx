interface TraceSampleProps {
  readonly colour: string;
  readonly width: number;
  readonly dash: readonly number[];
}

const LENGTH_PX = 26;

/** A piece of a trace's line, as it is drawn, to stand beside its name. */
export function TraceSample({ colour, width, dash }: TraceSampleProps) {
  return (
    <svg className="traceSample" width={LENGTH_PX} height="10" viewBox={`0 0 ${LENGTH_PX} 10`} aria-hidden="true">
      <line
        x1="0"
        x2={LENGTH_PX}
        y1="5"
        y2="5"
        stroke={colour}
        strokeWidth={width}
        strokeDasharray={dash.length === 0 ? undefined : dash.join(' ')}
      />
    </svg>
  );
}
