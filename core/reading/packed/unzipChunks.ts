import { Inflate, Unzip, type UnzipDecoder, type UnzipFile } from 'fflate';
import type { Problem } from '../problem.ts';
import { REFUSALS } from '../refusals.ts';
import { crc32 } from './crc32.ts';
import { ExpansionGuard } from './expansionGuard.ts';
import { noteFault } from './gunzipChunks.ts';
import type { UnpackReport } from './unpackReport.ts';
import { ZipDirectory } from './zipDirectory.ts';
import { couldBeRecording, isSpreadsheet, shortName } from './zipNames.ts';

/** An archive of recordings has a few entries. */
const MOST_ENTRIES = 1000;

/** One look at an archive as it streams past: which entry is read, what else is in it. */
class Archive {
  readonly ready: Uint8Array[] = [];
  readonly guard: ExpansionGuard;
  private readonly name: string;
  private readonly report: UnpackReport;
  private entries = 0;
  private chosen: string | null = null;
  private finished = false;
  private sum = 0;

  constructor(name: string, report: UnpackReport) {
    this.name = name;
    this.report = report;
    this.guard = new ExpansionGuard(name);
  }

  /** True once nothing more has to be read. */
  get done(): boolean {
    return this.report.problem !== null;
  }

  get found(): boolean {
    return this.chosen !== null;
  }

  get cutOff(): boolean {
    return this.chosen !== null && !this.finished;
  }

  /** Whether what came out has the check sum that the directory gives; true where the directory is not at hand. */
  fits(directory: ZipDirectory): boolean {
    const sum = this.chosen === null || !this.finished ? null : directory.sumOf(this.chosen);
    return sum === null || sum === this.sum;
  }

  enter(file: UnzipFile): void {
    this.entries++;
    if (this.entries > MOST_ENTRIES)
      this.stop(
        REFUSALS.archive(
          this.name,
          `This archive holds more than ${MOST_ENTRIES} files.`,
          'Unpack it, and open the recording inside.',
        ),
      );
    if (isSpreadsheet(file.name)) {
      this.stop(
        REFUSALS.knownOther(
          this.name,
          'spreadsheet',
          'a spreadsheet',
          'Open it in a spreadsheet program, save it as CSV, and open that file here.',
        ),
      );
    }
    const could = couldBeRecording(file.name);
    if (could && this.chosen !== null) this.report.others.push(shortName(file.name));
    if (could && this.chosen === null) this.choose(file);
    file.ondata = () => undefined;
    file.start();
  }

  /** A decoder for entries of one way of packing. Those that are not read are let go as they come: fflate would keep them. */
  decoder(compression: 0 | 8) {
    const archive = this;
    return class implements UnzipDecoder {
      static readonly compression = compression;
      ondata: UnzipDecoder['ondata'] = () => undefined;
      private readonly taken: boolean;
      private readonly inflate: Inflate | null;

      constructor(filename: string) {
        this.taken = filename === archive.chosen && !archive.finished;
        this.inflate = this.taken && compression === 8 ? new Inflate((data) => archive.give(data)) : null;
      }

      push(chunk: Uint8Array, final: boolean): void {
        if (!this.taken || archive.done || archive.finished) return;
        archive.guard.took(chunk.length);
        if (this.inflate === null) archive.give(chunk);
        else archive.inflateChunk(this.inflate, chunk, final);
        if (final) archive.finished = true;
      }
    };
  }

  give(data: Uint8Array): void {
    this.guard.gave(data.length);
    this.sum = crc32(data, this.sum);
    if (data.length > 0) this.ready.push(data.slice());
    const problem = this.guard.problem();
    if (problem !== null) this.stop(problem);
  }

  inflateChunk(inflate: Inflate, chunk: Uint8Array, final: boolean): void {
    try {
      inflate.push(chunk, final);
    } catch (fault) {
      noteFault(this.name, fault, this.report);
      this.finished = true;
    }
  }

  private choose(file: UnzipFile): void {
    this.chosen = file.name;
    this.report.entry = shortName(file.name);
    if (file.compression !== 0 && file.compression !== 8) {
      this.stop(
        REFUSALS.archive(
          this.name,
          'This archive is packed in a way that is not unpacked here.',
          'Unpack it, and open the recording inside.',
        ),
      );
    }
  }

  private stop(problem: Problem): void {
    this.report.problem ??= problem;
  }
}

/** Whether the first entry is encrypted, by bit 0 of its flags (APPNOTE.TXT 4.4.4). */
function isLocked(first: Uint8Array): boolean {
  return first[2] === 3 && ((first[6] ?? 0) & 1) === 1;
}

/** The bytes of the first recording in a zip archive. Names in it are shown, and never used as paths. */
export async function* unzipChunks(
  name: string,
  chunks: AsyncIterable<Uint8Array>,
  report: UnpackReport,
): AsyncGenerator<Uint8Array, void, undefined> {
  const archive = new Archive(name, report);
  const directory = new ZipDirectory();
  const unzip = new Unzip((file) => archive.enter(file));
  unzip.register(archive.decoder(8));
  unzip.register(archive.decoder(0));
  try {
    for await (const chunk of chunks) {
      if (!directory.begun && isLocked(chunk)) report.problem = REFUSALS.encrypted(name);
      if (archive.done) return;
      for (let at = 0; at < chunk.length; ) {
        const slice = new Uint8Array(chunk.subarray(at, at + archive.guard.slice)); // fflate may keep it
        at += slice.length;
        directory.took(slice);
        unzip.push(slice, false);
        yield* archive.ready.splice(0);
        if (archive.done) return;
      }
    }
  } catch (fault) {
    noteFault(name, fault, report);
  }
  endUnzip(unzip);
  yield* archive.ready.splice(0);
  if (!archive.fits(directory)) report.problem ??= REFUSALS.damaged(name);
  if (archive.cutOff) report.broken ??= 'The packed file ends in the middle; what was recorded after that is missing.';
  if (!archive.found)
    report.problem ??= REFUSALS.archive(
      name,
      'This archive holds no recording.',
      'Choose the file in which the instrument wrote its measurements.',
    );
}

/** Lets entries end whose end is only known at the end of the archive; one that misses its end shows in `cutOff`. */
function endUnzip(unzip: Unzip): void {
  try {
    unzip.push(new Uint8Array(0), true);
  } catch {
    return;
  }
}
