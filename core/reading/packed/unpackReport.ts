import type { CaptureWarning } from '../../capture/warnings.ts';
import type { Problem } from '../problem.ts';

/** What happened while a packed file was unpacked; filled in as its bytes are read. */
export interface UnpackReport {
  /** Why reading had to stop; the file is refused. */
  problem: Problem | null;
  /** Why the data end early; what was read up to there is kept. */
  broken: string | null;
  /** Names of further recordings in an archive, which are not read. */
  readonly others: string[];
  /** Name of the entry that is read, where there are several. */
  entry: string | null;
}

/** A report in which nothing has happened yet. */
export function newReport(): UnpackReport {
  return { problem: null, broken: null, others: [], entry: null };
}

/** What is to be told besides the warnings of the recording itself. */
export function unpackWarnings({ broken, others, entry }: UnpackReport): CaptureWarning[] {
  const found: CaptureWarning[] = [];
  if (broken !== null) found.push({ id: 'truncated', detail: broken, row: null, count: 1, repaired: false });
  if (others.length > 0) {
    const more = others.length === 1 ? 'one more recording' : `${others.length} more recordings`;
    const detail = `The archive holds ${more} (${others.slice(0, 3).join(', ')}${others.length > 3 ? ', …' : ''}); only ${entry ?? 'the first'} was read.`;
    found.push({ id: 'other', detail, row: null, count: others.length, repaired: false });
  }
  return found;
}
