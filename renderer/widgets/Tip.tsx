import { type ReactNode, useEffect, useId, useLayoutEffect, useRef, useState } from 'react';

interface TipProps {
  /** What is said beside the control: its key, or why it cannot be used now. Null shows nothing. */
  readonly words: string | null;
  /** False where the words are the control's own name already. */
  readonly describes?: boolean;
  /** Gives the control the id that describes it. */
  children(describedBy: string | undefined): ReactNode;
}

/** A short word beside a control, on hover and on focus by key. Escape hides it; the pointer may rest on it. */
export function Tip({ words, describes = true, children }: TipProps) {
  const id = useId();
  const home = useRef<HTMLSpanElement>(null);
  const [open, setOpen] = useState(false);
  useEffect(() => (home.current === null ? undefined : watch(home.current, setOpen)), []);

  return (
    <span ref={home} className="tipHome">
      {children(words === null || !describes ? undefined : id)}
      {words !== null && describes && (
        <span className="unseen" id={id}>
          {words}
        </span>
      )}
      {open && words !== null && <Float words={words} />}
    </span>
  );
}

function watch(home: HTMLElement, setOpen: (open: boolean) => void): () => void {
  const stop = new AbortController();
  const on = (name: string, hear: (event: Event) => void): void =>
    home.addEventListener(name, hear, { signal: stop.signal });
  on('pointerenter', () => setOpen(true));
  on('pointerleave', () => setOpen(false));
  on('focusin', () => setOpen(home.querySelector(':focus-visible') !== null));
  on('focusout', () => setOpen(false));
  on('pointerdown', () => setOpen(false));
  on('keydown', (event) => {
    if (!(event instanceof KeyboardEvent) || event.key !== 'Escape' || home.querySelector('.tip') === null) return;
    setOpen(false);
    event.preventDefault(); // else the dialog beneath would close with it
    event.stopPropagation();
  });
  return () => stop.abort();
}

/** In the top layer, so that neither a margin nor a dialog cuts it off. */
function Float({ words }: { readonly words: string }) {
  const tip = useRef<HTMLSpanElement>(null);
  useLayoutEffect(() => {
    if (tip.current === null) return;
    tip.current.showPopover();
    place(tip.current, tip.current.parentElement ?? tip.current);
  }, []);
  return (
    <span ref={tip} popover="manual" className="tip" aria-hidden="true">
      {words}
    </span>
  );
}

/** Under the control, or above it where there is no room; always inside the window. */
function place(tip: HTMLElement, home: HTMLElement): void {
  const anchor = (home.firstElementChild ?? home).getBoundingClientRect();
  const size = tip.getBoundingClientRect();
  const below = anchor.bottom + 6;
  const top = below + size.height > window.innerHeight ? anchor.top - size.height - 6 : below;
  const left = Math.min(Math.max(8, anchor.left), window.innerWidth - size.width - 8);
  tip.style.top = `${top}px`;
  tip.style.left = `${left}px`;
}
