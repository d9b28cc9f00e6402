import { type ReactNode, useEffect, useRef } from 'react';

interface ScrollStopProps {
  readonly label: string;
  readonly className?: string;
  readonly children?: ReactNode;
}

/** A part that scrolls by itself: a stop for the keyboard, so that its arrows work without a pointer. */
export function ScrollStop({ label, className, children }: ScrollStopProps) {
  const home = useRef<HTMLElement>(null);
  useEffect(() => {
    if (home.current !== null) home.current.tabIndex = 0;
  }, []);
  return (
    <section ref={home} className={className} aria-label={label}>
      {children}
    </section>
  );
}
