import type { ReactNode } from 'react';
import { PANE_COLOURS } from '../style/traceColours.ts';
import { GUIDE_DASH_PX } from './guideDrawing.ts';
import type { PaneModel } from './paneModel.ts';
import type { Readings } from './readings.ts';
import type { Stage } from './stage.ts';
import { TraceReadout } from './TraceReadout.tsx';
import { TraceSample } from './TraceSample.tsx';

interface PaneHeadProps {
  readonly stage: Stage;
  readonly readings: Readings;
  readonly model: PaneModel;
  /** The pane's menu. */
  readonly children?: ReactNode;
}

/** Name and unit of a pane's axis, then each trace with a piece of its line, its name and its value at the cursor. */
export function PaneHead({ stage, readings, model, children }: PaneHeadProps) {
  const { title, unit, legend, shown, wish } = model;
  return (
    <figcaption className="paneHead">
      <span className="paneTitle">
        {title}
        {unit !== '1' && <span className="paneUnit">, {unit}</span>}
      </span>
      <ul className="paneLegend">
        {legend.map((entry) => (
          <li key={entry.readingKey}>
            <TraceSample colour={entry.colour} width={entry.width} dash={entry.dash} />
            {entry.words !== '' && <span className="traceName">{entry.words}</span>}
            {entry.channel !== null && (
              <TraceReadout
                stage={stage}
                readings={readings}
                readingKey={entry.readingKey}
                channel={entry.channel}
                shown={shown}
              />
            )}
          </li>
        ))}
        {wish.guides.map(({ words }) => (
          <li key={words} className="guideEntry">
            <TraceSample colour={PANE_COLOURS.guide[wish.theme]} width={1} dash={GUIDE_DASH_PX} />
            {words}
          </li>
        ))}
      </ul>
      {children}
    </figcaption>
  );
}
