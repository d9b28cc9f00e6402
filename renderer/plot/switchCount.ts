import type { TraceSource } from './traceStackProps.ts';

/** Beyond this many the count is given as "more than": each switch is one question to the core. */
const MOST_COUNTED = 500;

export interface SwitchCount {
  readonly count: number;
  /** False where there are more than were counted. */
  readonly complete: boolean;
}

/**
 * Switches of a channel between two times: those after the earlier, up to and including the later.
 * Null when `givenUp` says so before the end, or when the question fails.
 */
export async function countSwitches(
  source: TraceSource,
  channelId: string,
  fromS: number,
  toS: number,
  givenUp: () => boolean,
): Promise<SwitchCount | null> {
  let atS = Math.min(fromS, toS);
  const endS = Math.max(fromS, toS);
  for (let count = 0; count <= MOST_COUNTED; count++) {
    const nextS = await source.nextStop(channelId, atS, 1, 'switch').catch(() => undefined);
    if (givenUp() || nextS === undefined) return null;
    if (nextS === null || nextS > endS || nextS <= atS) return { count, complete: true };
    atS = nextS;
  }
  return { count: MOST_COUNTED, complete: false };
}
