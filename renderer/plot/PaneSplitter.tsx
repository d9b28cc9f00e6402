import type { KeyboardEvent, PointerEvent } from 'react';
import { followPointer } from './followPointer.ts';

interface PaneSplitterProps {
  /** Pane above, which the splitter is named after. */
  readonly paneId: string;
  readonly title: string;
  /** Share of the two panes' height that the upper one has, 0 to 1. */
  readonly share: number;
  onShare(share: number): void;
  onFold(): void;
}

const STEP = 0.05;
const LEAST = 0.1;
const MOST = 0.9;

/** The rule between two panes: dragged, or moved with the arrow keys; Enter folds the pane above. */
export function PaneSplitter({ paneId, title, share, onShare, onFold }: PaneSplitterProps) {
  const set = (next: number): void => onShare(Math.min(MOST, Math.max(LEAST, next)));

  const onKeyDown = (event: KeyboardEvent): void => {
    const next = keyShare(event.key, share);
    if (event.key === 'Enter') onFold();
    else if (next !== null) set(next);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  const onPointerDown = (event: PointerEvent<HTMLElement>): void => {
    const rule = event.currentTarget;
    const above = rule.previousElementSibling;
    const below = rule.nextElementSibling;
    if (event.button !== 0 || above === null || below === null) return;
    const heights = above.clientHeight + below.clientHeight;
    const fromY = event.clientY;
    followPointer(rule, event.nativeEvent, {
      move: (moved) => set(share + (moved.clientY - fromY) / heights),
      up: () => undefined,
      abandon: () => onShare(share),
    });
  };

  return (
    <hr
      className="paneSplitter"
      tabIndex={0}
      aria-orientation="horizontal"
      aria-label={`Height of ${title}`}
      aria-controls={`pane-${paneId}`}
      aria-valuemin={LEAST * 100}
      aria-valuemax={MOST * 100}
      aria-valuenow={Math.round(share * 100)}
      aria-valuetext={`${Math.round(share * 100)} % of both panes`}
      onKeyDown={onKeyDown}
      onPointerDown={onPointerDown}
    />
  );
}

function keyShare(key: string, share: number): number | null {
  switch (key) {
    case 'ArrowUp':
      return share - STEP;
    case 'ArrowDown':
      return share + STEP;
    case 'Home':
      return LEAST;
    case 'End':
      return MOST;
    default:
      return null;
  }
}
