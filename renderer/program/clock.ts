/** Time as the program sees it, so that tests can hold it still. */
export interface Clock {
  /** Milliseconds, only ever compared with each other. */
  now(): number;
  /** RFC 3339 with the offset of the place. */
  instant(): string;
  /** Does something once, later; the returned function calls it off. */
  after(milliseconds: number, deed: () => void): () => void;
}

export const systemClock: Clock = {
  now: () => performance.now(),
  instant: () => instantWithOffset(new Date()),
  after: (milliseconds, deed) => {
    const timer = setTimeout(deed, milliseconds);
    return () => clearTimeout(timer);
  },
};

/** "2026-11-24T22:54:07+01:00": local time with its offset, so that a reader elsewhere knows both. */
export function instantWithOffset(date: Date): string {
  const offset = -date.getTimezoneOffset();
  const local = new Date(date.getTime() + offset * 60_000).toISOString().slice(0, 19);
  if (offset === 0) return `${local}Z`;
  const two = (n: number): string => String(n).padStart(2, '0');
  const size = Math.abs(offset);
  return `${local}${offset < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}
