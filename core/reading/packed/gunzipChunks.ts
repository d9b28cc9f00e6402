import { FlateErrorCode, Gunzip } from 'fflate';
import { REFUSALS } from '../refusals.ts';
import { crc32 } from './crc32.ts';
import { ExpansionGuard } from './expansionGuard.ts';
import type { UnpackReport } from './unpackReport.ts';

/**
 * The bytes inside a gzip stream, of one member or several. A stream that is cut off or damaged ends where it breaks,
 * with a word in the report; one that grows beyond all measure ends with a refusal there.
 */
export async function* gunzipChunks(
  name: string,
  chunks: AsyncIterable<Uint8Array>,
  report: UnpackReport,
): AsyncGenerator<Uint8Array, void, undefined> {
  const guard = new ExpansionGuard(name);
  const trailer = new Trailer();
  const ready: Uint8Array[] = [];
  const gunzip = new Gunzip((data) => {
    guard.gave(data.length);
    trailer.gave(data);
    if (data.length > 0) ready.push(data);
  });
  gunzip.onmember = (start) => trailer.nextMember(start);
  for await (const chunk of chunks) {
    for (let at = 0; at < chunk.length; ) {
      const slice = new Uint8Array(chunk.subarray(at, at + guard.slice)); // fflate may keep it
      at += slice.length;
      guard.took(slice.length);
      trailer.took(slice);
      if (!push(name, gunzip, slice, false, trailer, report)) {
        yield* ready.splice(0);
        return;
      }
      yield* ready.splice(0);
      report.problem = trailer.wrong ? REFUSALS.damaged(name) : guard.problem();
      if (report.problem !== null) return;
    }
  }
  const ended = push(name, gunzip, new Uint8Array(0), true, trailer, report);
  yield* ready.splice(0);
  if (!ended || trailer.fitsBeforePadding()) return;
  if (trailer.fitsAsFarAsItGoes()) report.broken = CUT_OFF;
  else report.problem ??= REFUSALS.damaged(name);
}

function push(
  name: string,
  gunzip: Gunzip,
  slice: Uint8Array,
  final: boolean,
  trailer: Trailer,
  report: UnpackReport,
): boolean {
  try {
    gunzip.push(slice, final);
    return true;
  } catch (fault) {
    // fflate takes zeros behind the last member for the head of another.
    if (!trailer.fitsBeforePadding()) noteFault(name, fault, report);
    return false;
  }
}

const CUT_OFF = 'The packed file ends in the middle; what was recorded after that is missing.';

/**
 * Notes what an inflater threw. A stream that merely ends too early is good up to there; in a damaged one nobody can say
 * which values are wrong, and a converter must not be judged by them.
 */
export function noteFault(name: string, fault: unknown, report: UnpackReport): void {
  const cut = fault instanceof Error && 'code' in fault && fault.code === FlateErrorCode.UnexpectedEOF;
  if (cut) report.broken = CUT_OFF;
  else report.problem ??= REFUSALS.damaged(name);
}

/** Packed bytes that are kept beside the newest slice: a member's trailer lies this near to the end of the next header. */
const KEPT = 1024;
const TRAILER = 8;

/** Checks length and check sum of each member (RFC 1952, 2.3.1); fflate checks neither. */
class Trailer {
  /** True once a member did not hold what its trailer says. */
  wrong = false;
  /** Packed bytes so far. */
  taken = 0;
  private sum = 0;
  private length = 0;
  private last = new Uint8Array(0);

  gave(data: Uint8Array): void {
    this.sum = crc32(data, this.sum);
    this.length += data.length;
  }

  took(slice: Uint8Array): void {
    const before = this.last.subarray(-KEPT);
    this.last = new Uint8Array(before.length + slice.length);
    this.last.set(before);
    this.last.set(slice, before.length);
    this.taken += slice.length;
  }

  /** A member begins at packed byte `start`; the one before it has ended. */
  nextMember(start: number): void {
    if (!this.fits(start)) this.wrong = true;
    this.sum = 0;
    this.length = 0;
  }

  /** Whether what came out fits to the trailer that ends at packed byte `end`; true where that is no longer at hand. */
  fits(end: number): boolean {
    const at = end - TRAILER - (this.taken - this.last.length);
    if (at < 0) return true;
    const view = new DataView(this.last.buffer, at, TRAILER);
    return view.getUint32(0, true) === this.sum && view.getUint32(4, true) === this.length % 2 ** 32;
  }

  /** The same at the end of the file, behind which tapes and downloads may have filled up with zeros. */
  fitsBeforePadding(): boolean {
    const first = this.taken - this.last.length;
    let end = this.taken;
    while (!this.fits(end)) if (this.last[--end - first] !== 0) return false;
    return true;
  }

  /** Whether the file ends within the trailer, behind a check sum that fits: its length is cut off, and no value is. */
  fitsAsFarAsItGoes(): boolean {
    const view = new DataView(this.last.buffer);
    for (let missing = 1; missing <= 4 && this.last.length >= TRAILER - missing; missing++)
      if (view.getUint32(this.last.length - TRAILER + missing, true) === this.sum) return true;
    return false;
  }
}
