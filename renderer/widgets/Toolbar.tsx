import { type KeyboardEvent, type ReactNode, useEffect, useRef } from 'react';

interface ToolbarProps {
  readonly label: string;
  readonly className?: string;
  readonly children: ReactNode;
}

/** A row of buttons with one tab stop: Left and Right move inside, Home and End to its ends. */
export function Toolbar({ label, className, children }: ToolbarProps) {
  const bar = useRef<HTMLDivElement>(null);

  // The stop is where the focus was last; buttons may come and go.
  useEffect(() => {
    const buttons = buttonsOf(bar.current);
    const stop = buttons.find((button) => button.tabIndex === 0) ?? buttons[0];
    for (const button of buttons) button.tabIndex = button === stop ? 0 : -1;
  });

  const move = (event: KeyboardEvent): void => {
    const buttons = buttonsOf(bar.current);
    const at = buttons.findIndex((button) => button.matches(':focus'));
    const to = targetOf(event.key, at, buttons.length);
    const target = to === null ? undefined : buttons[to];
    if (at === -1 || target === undefined) return;
    event.preventDefault();
    for (const button of buttons) button.tabIndex = button === target ? 0 : -1;
    target.focus();
  };

  return (
    <div
      ref={bar}
      role="toolbar"
      aria-label={label}
      className={`toolbar${className === undefined ? '' : ` ${className}`}`}
      onKeyDown={move}
    >
      {children}
    </div>
  );
}

function buttonsOf(bar: HTMLElement | null): HTMLButtonElement[] {
  return bar === null ? [] : [...bar.querySelectorAll('button')];
}

function targetOf(key: string, at: number, count: number): number | null {
  if (key === 'ArrowRight') return Math.min(at + 1, count - 1);
  if (key === 'ArrowLeft') return Math.max(at - 1, 0);
  if (key === 'Home') return 0;
  if (key === 'End') return count - 1;
  return null;
}
