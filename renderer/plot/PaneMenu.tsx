import { ChevronDown } from 'lucide-react';
import { type ReactNode, type RefObject, useEffect, useId, useLayoutEffect, useRef, useState } from 'react';
import { Button } from '../widgets/Button.tsx';
import { NumberField } from '../widgets/NumberField.tsx';
import { numberWords } from '../words/numbers.ts';
import type { ShownUnit } from './shownUnit.ts';
import type { PaneLayout } from './traceStackProps.ts';
import { niceStep, stepDigits } from './valueTicks.ts';

interface PaneMenuProps {
  readonly title: string;
  readonly scale: PaneLayout['scale'];
  readonly folded: boolean;
  readonly shown: ShownUnit;
  readonly quantityRange: readonly [number, number];
  /** The scale as it is drawn at this moment, in the unit that is kept. */
  range(): readonly [number, number];
  onScale(scale: PaneLayout['scale']): void;
  onFold(): void;
  /** Null where the pane is the first or last already, or where there is no order to change. */
  readonly onUp: (() => void) | null;
  readonly onDown: (() => void) | null;
}

const SCALE_WORDS = { quantity: 'Fixed scale', auto: 'Fitted scale', hand: 'Scale by hand' } as const;

/** The small menu of a pane: its vertical scale, its place, its fold. The button says which scale it is. */
export function PaneMenu(props: PaneMenuProps) {
  const [open, setOpen] = useState(false);
  const home = useRef<HTMLDivElement>(null);
  const id = useId();
  useClosing(home, open, setOpen);
  const words = SCALE_WORDS[props.scale.kind];
  return (
    <div className="paneMenu" ref={home}>
      <button
        type="button"
        className="paneMenuButton"
        aria-expanded={open}
        aria-controls={id}
        aria-label={`${words} and place of ${props.title}`}
        onClick={() => setOpen(!open)}
      >
        {words}
        <ChevronDown size={14} strokeWidth={1.8} aria-hidden="true" />
      </button>
      {open && (
        <MenuCard id={id} label={`Scale and place of ${props.title}`}>
          <ScaleChoice {...props} />
          <PlaceChoice {...props} />
        </MenuCard>
      )}
    </div>
  );
}

interface MenuCardProps {
  readonly id: string;
  readonly label: string;
  readonly children: ReactNode;
}

/** In the top layer, so that no pane below it shines through; over its button where there is no room under it. */
function MenuCard({ id, label, children }: MenuCardProps) {
  const card = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    const box = card.current;
    const button = box?.previousElementSibling;
    if (box === null || !(button instanceof HTMLElement)) return;
    if (!box.matches(':popover-open')) box.showPopover(); // engines before 2024 refuse a second time
    const anchor = button.getBoundingClientRect();
    const below = anchor.bottom + 2;
    const fits = below + box.offsetHeight <= window.innerHeight;
    box.style.top = `${Math.max(4, fits ? below : anchor.top - 2 - box.offsetHeight)}px`;
    box.style.left = `${Math.max(4, anchor.right - box.offsetWidth)}px`;
  });
  return (
    <section ref={card} popover="manual" className="paneMenuCard" id={id} aria-label={label}>
      {children}
    </section>
  );
}

function ScaleChoice({ scale, shown, quantityRange, range, onScale }: PaneMenuProps) {
  const name = useId();
  const [low, high] = [shown.toShown(quantityRange[0]), shown.toShown(quantityRange[1])];
  const digits = stepDigits(niceStep((high - low) / 10));
  const fixed = `${numberWords(low, digits)} to ${numberWords(high, digits)}`;
  const byHand = (): PaneLayout['scale'] => {
    const [low, high] = range();
    return { kind: 'hand', low, high };
  };
  return (
    <fieldset className="scaleChoice">
      <legend>Vertical scale</legend>
      <label>
        <input
          type="radio"
          name={name}
          checked={scale.kind === 'quantity'}
          onChange={() => onScale({ kind: 'quantity' })}
        />
        Fixed: {fixed} {shown.unit === '1' ? '' : shown.unit}
      </label>
      <label>
        <input type="radio" name={name} checked={scale.kind === 'auto'} onChange={() => onScale({ kind: 'auto' })} />
        Fitted to what is visible
      </label>
      {scale.kind === 'auto' && (
        <Button look="quiet" onPress={() => onScale({ kind: 'auto' })}>
          Fit again
        </Button>
      )}
      <label>
        <input type="radio" name={name} checked={scale.kind === 'hand'} onChange={() => onScale(byHand())} />
        By hand
      </label>
      {scale.kind === 'hand' && <HandScale scale={scale} shown={shown} onScale={onScale} />}
    </fieldset>
  );
}

interface HandScaleProps {
  readonly scale: Extract<PaneLayout['scale'], { kind: 'hand' }>;
  readonly shown: ShownUnit;
  onScale(scale: PaneLayout['scale']): void;
}

function HandScale({ scale, shown, onScale }: HandScaleProps) {
  const rounded = (value: number): number => Number(shown.toShown(value).toPrecision(6));
  const set = (part: 'low' | 'high', typed: number | null): void => {
    if (typed === null) return;
    const next = { ...scale, [part]: shown.toKept(typed) };
    if (next.high > next.low) onScale(next);
  };
  const unit = shown.unit === '1' ? {} : { unit: shown.unit };
  return (
    <div className="handScale">
      <NumberField
        label="Lowest"
        {...unit}
        value={rounded(scale.low)}
        max={rounded(scale.high)}
        onValue={(value) => set('low', value)}
      />
      <NumberField
        label="Highest"
        {...unit}
        value={rounded(scale.high)}
        min={rounded(scale.low)}
        onValue={(value) => set('high', value)}
      />
    </div>
  );
}

function PlaceChoice({ folded, onFold, onUp, onDown }: PaneMenuProps) {
  return (
    <div className="placeChoice">
      <Button look="quiet" reason={onUp === null ? 'This is the uppermost pane.' : null} onPress={() => onUp?.()}>
        Move up
      </Button>
      <Button look="quiet" reason={onDown === null ? 'This is the lowest pane.' : null} onPress={() => onDown?.()}>
        Move down
      </Button>
      <Button look="quiet" onPress={onFold}>
        {folded ? 'Unfold' : 'Fold'}
      </Button>
    </div>
  );
}

/** Escape, a press elsewhere and focus that goes elsewhere close the menu; Escape gives the focus back. */
function useClosing(home: RefObject<HTMLElement | null>, open: boolean, setOpen: (open: boolean) => void): void {
  useEffect(() => {
    const box = home.current;
    if (!open || box === null) return undefined;
    const stop = new AbortController();
    const { signal } = stop;
    const leave = (event: Event): void => {
      const to = event instanceof FocusEvent ? event.relatedTarget : event.target;
      if (to instanceof Node && !box.contains(to)) setOpen(false);
    };
    const key = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape') return;
      event.preventDefault();
      event.stopPropagation();
      setOpen(false);
      box.querySelector('button')?.focus();
    };
    document.addEventListener('pointerdown', leave, { signal, capture: true });
    box.addEventListener('focusout', leave, { signal });
    box.addEventListener('keydown', key, { signal });
    return () => stop.abort();
  }, [home, open, setOpen]);
}
