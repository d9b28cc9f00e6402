/** Exit status of the headless command. Other programs rely on it. */
export const EXIT_STATUS = {
  /** Every capture was read and judged, whatever the finding. */
  judged: 0,
  /** A flag or its value makes no sense. */
  wrongUsage: 2,
  /** A capture could not be read; the others were still judged. */
  notRead: 3,
} as const;

export type ExitStatus = (typeof EXIT_STATUS)[keyof typeof EXIT_STATUS];

/** The status of several captures: one that could not be read outweighs wrong usage, which outweighs success. */
export function worst(statuses: readonly ExitStatus[]): ExitStatus {
  if (statuses.includes(EXIT_STATUS.notRead)) return EXIT_STATUS.notRead;
  return statuses.includes(EXIT_STATUS.wrongUsage) ? EXIT_STATUS.wrongUsage : EXIT_STATUS.judged;
}
