/** A moment as RFC 3339 to the second, with the offset of this computer: "2026-11-24T15:30:00+01:00". */
export function localInstant(moment: Date): string {
  const offset = -moment.getTimezoneOffset();
  const local = new Date(moment.getTime() + offset * 60_000).toISOString().slice(0, 19);
  const two = (number: number) => String(Math.floor(number)).padStart(2, '0');
  const size = Math.abs(offset);
  return `${local}${offset < 0 ? '-' : '+'}${two(size / 60)}:${two(size % 60)}`;
}
