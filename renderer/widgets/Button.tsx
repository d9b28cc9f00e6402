import type { LucideIcon } from 'lucide-react';
import type { ReactNode } from 'react';
import { Tip } from './Tip.tsx';

interface ButtonProps {
  readonly children: ReactNode;
  readonly icon?: LucideIcon;
  /** 'main' the one action of its place, 'outline' an ordinary action, 'quiet' words among words. */
  readonly look?: 'main' | 'outline' | 'quiet';
  /** Why it cannot be used now. The button stays in the tab order and says so. */
  readonly reason?: string | null;
  /** Said on hover and focus where there is no reason: its key, for example. */
  readonly tip?: string | null;
  /** Names the thing it acts on, where the words alone do not: "Delete" of "Hold 1". Begins with the words seen. */
  readonly label?: string;
  readonly pressed?: boolean;
  readonly type?: 'button' | 'submit';
  readonly autoFocus?: boolean;
  readonly className?: string;
  readonly command?: string;
  onPress?(): void;
}

/** A button that always says what it does, and why not where it cannot. */
export function Button(props: ButtonProps) {
  const { children, icon: Icon, look = 'outline', reason = null, tip = null, label, pressed, type = 'button' } = props;
  const off = reason !== null;
  return (
    <Tip words={reason ?? tip}>
      {(describedBy) => (
        <button
          type={type}
          className={`button ${look}${props.className === undefined ? '' : ` ${props.className}`}`}
          aria-disabled={off || undefined}
          aria-describedby={describedBy}
          aria-label={label}
          aria-pressed={pressed}
          data-command={props.command}
          data-autofocus={props.autoFocus || undefined}
          onClick={(event) => {
            if (off) event.preventDefault();
            else props.onPress?.();
          }}
        >
          {Icon !== undefined && <Icon size={18} strokeWidth={1.6} aria-hidden="true" />}
          <span>{children}</span>
        </button>
      )}
    </Tip>
  );
}

interface IconButtonProps {
  readonly icon: LucideIcon;
  /** What it does and to what; shown on hover and focus. */
  readonly label: string;
  readonly pressed?: boolean;
  readonly className?: string;
  onPress(): void;
}

/** A button with a sign only, for rows of a list; its words come on hover and focus. */
export function IconButton({ icon: Icon, label, pressed, className, onPress }: IconButtonProps) {
  return (
    <Tip words={label} describes={false}>
      {() => (
        <button
          type="button"
          className={`button quiet sign${className === undefined ? '' : ` ${className}`}`}
          aria-label={label}
          aria-pressed={pressed}
          onClick={onPress}
        >
          <Icon size={18} strokeWidth={1.6} aria-hidden="true" />
        </button>
      )}
    </Tip>
  );
}
