/** Everything reading can find odd about a file without refusing it. The words are made where they are shown. */
export const WARNING_IDS = [
  'rowsSkipped',
  'gap',
  'clockJumpedBack',
  'clockPastMidnight',
  'duplicateTimes',
  'outOfOrder',
  'secondRecording',
  'truncated',
  'channelNeverChanges',
  'heldValues',
  'roleQuestioned',
  'roleGuessed',
  'headerRepeated',
  'mixedLineEnds',
  'badEncoding',
  'unitGuessed',
  'timeGuessed',
  'noTime',
  'unreadableCells',
  'droppedMessages',
  'unfinished',
  'other',
] as const;

export type WarningId = (typeof WARNING_IDS)[number];

/** One thing that was found, or repaired, while a capture was read. */
export interface CaptureWarning {
  readonly id: WarningId;
  /** One sentence in plain words, with the numbers. */
  readonly detail: string;
  /** First row it concerns, counted from 1 as an editor does, or null where it concerns no row. */
  readonly row: number | null;
  /** Rows it concerns; 1 where it is a single event. */
  readonly count: number;
  /**
   * True where the reader changed when rows were taken (repairs.ts): a person may undo it. What could not be taken in at
   * all, a row without a time, is no repair.
   */
  readonly repaired: boolean;
}
