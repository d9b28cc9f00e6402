import { X } from 'lucide-react';
import { type KeyboardEvent, type ReactNode, useEffect, useId, useRef } from 'react';
import { IconButton } from './Button.tsx';

interface DialogProps {
  readonly title: string;
  /** One sentence under the title, or nothing. */
  readonly lead?: ReactNode;
  readonly children: ReactNode;
  /** The row of actions at its foot. */
  readonly foot?: ReactNode;
  readonly width?: 'narrow' | 'wide' | 'page';
  onClose(): void;
}

const FOCUSABLE = 'button, input, select, textarea, summary, a[href], [tabindex]:not([tabindex="-1"])';

/**
 * A dialog by the pattern of the ARIA authoring practices: modal, named, focus inside and back where it came from,
 * Tab stays inside, Escape and a visible button close it.
 */
export function Dialog({ title, lead, children, foot, width = 'narrow', onClose }: DialogProps) {
  const box = useRef<HTMLDialogElement>(null);
  const titleId = useId();

  useEffect(() => {
    const dialog = box.current;
    if (dialog === null) return;
    const before = document.activeElement;
    dialog.showModal();
    const first = dialog.querySelector<HTMLElement>('[data-autofocus]') ?? dialog.querySelector<HTMLElement>('h2');
    first?.focus();
    // A body that only reads is a stop itself, so that the arrows scroll it.
    const body = dialog.querySelector<HTMLElement>('.dialogBody');
    if (body !== null && body.querySelector(FOCUSABLE) === null) body.tabIndex = 0;
    return () => {
      dialog.close();
      // Where what had the focus went with what the dialog did, the page gets it: from nowhere Tab begins at the very top.
      const back = before instanceof HTMLElement && before.isConnected ? before : document.querySelector('main');
      if (back instanceof HTMLElement) back.focus();
    };
  }, []);

  return (
    <dialog
      ref={box}
      className={`dialog ${width}`}
      aria-labelledby={titleId}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
      onKeyDown={(event) => keepInside(event, box.current)}
    >
      <header className="dialogHead">
        <h2 id={titleId} tabIndex={-1}>
          {title}
        </h2>
        <IconButton icon={X} label="Close" onPress={onClose} />
      </header>
      {lead !== undefined && <p className="dialogLead">{lead}</p>}
      <div className="dialogBody">{children}</div>
      {foot !== undefined && <footer className="dialogFoot">{foot}</footer>}
    </dialog>
  );
}

function keepInside(event: KeyboardEvent, dialog: HTMLDialogElement | null): void {
  if (event.key !== 'Tab' || dialog === null) return;
  // What Tab itself would pass over, a tab that is not chosen or a folded part, is no end of the round.
  const stops = [...dialog.querySelectorAll<HTMLElement>(FOCUSABLE)].filter(
    (stop) => stop.tabIndex >= 0 && stop.checkVisibility(),
  );
  const first = stops[0];
  const last = stops.at(-1);
  if (first === undefined || last === undefined) return;
  const at = document.activeElement;
  const leaving = event.shiftKey ? at === first || at?.tagName === 'H2' : at === last;
  if (!leaving) return;
  event.preventDefault();
  (event.shiftKey ? last : first).focus();
}
