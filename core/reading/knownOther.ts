import type { Problem } from './problem.ts';
import { REFUSALS } from './refusals.ts';
import { decodeText } from './text/decodeText.ts';

interface Signature {
  readonly id: string;
  readonly at: number;
  readonly bytes: readonly number[];
  readonly kind: string;
  readonly doNext: string;
}

const PICTURE = 'Choose the file in which the instrument wrote its measurements; values cannot be read off a picture.';
const SHEET = 'Open it in a spreadsheet program, save it as CSV, and open that file here.';
const PRINTED = 'Export the recording as CSV; a printed page no longer holds the samples.';
const PLAYED = 'Choose the file in which the instrument wrote its measurements as text, such as CSV.';
const CONVERT = 'Open it with the program that wrote it, export the table as CSV, and open that file here.';
const ROWS = 'Export the recording as CSV, with one row for each moment.';
const UNPACK = 'Unpack it first, and open the recording inside. Zip and gzip are unpacked here by themselves.';

/** First bytes of files that people drop by mistake. */
const SIGNATURES: readonly Signature[] = [
  sign('picture', 0, [0x89, 0x50, 0x4e, 0x47], 'a picture', PICTURE),
  sign('picture', 0, [0xff, 0xd8, 0xff], 'a picture', PICTURE),
  sign('picture', 0, 'GIF8', 'a picture', PICTURE),
  sign('picture', 0, 'BM', 'a picture', PICTURE),
  sign('picture', 0, [0x49, 0x49, 0x2a, 0x00], 'a picture', PICTURE),
  sign('picture', 0, [0x4d, 0x4d, 0x00, 0x2a], 'a picture', PICTURE),
  sign('picture', 8, 'WEBP', 'a picture', PICTURE),
  sign('picture', 4, 'ftypheic', 'a picture', PICTURE),
  sign('picture', 4, 'ftypavif', 'a picture', PICTURE),
  sign('document', 0, '%PDF', 'a PDF document', PRINTED),
  sign('document', 0, '{\\rtf', 'a text document', PRINTED),
  sign(
    'spreadsheet',
    0,
    [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1],
    'a spreadsheet or another office document',
    SHEET,
  ),
  sign('video', 4, 'ftyp', 'a video', PLAYED),
  sign('video', 8, 'AVI ', 'a video', PLAYED),
  sign('video', 0, [0x1a, 0x45, 0xdf, 0xa3], 'a video', PLAYED),
  sign('sound', 8, 'WAVE', 'a sound', PLAYED),
  sign('sound', 0, 'ID3', 'a sound', PLAYED),
  sign('sound', 0, 'OggS', 'a sound', PLAYED),
  sign('sound', 0, 'fLaC', 'a sound', PLAYED),
  sign('archive', 0, [0x37, 0x7a, 0xbc, 0xaf, 0x27, 0x1c], 'an archive of a kind that is not unpacked here', UNPACK),
  sign('archive', 0, 'Rar!', 'an archive of a kind that is not unpacked here', UNPACK),
  sign('archive', 0, [0xfd, 0x37, 0x7a, 0x58, 0x5a], 'packed in a way that is not unpacked here', UNPACK),
  sign('archive', 0, 'BZh', 'packed in a way that is not unpacked here', UNPACK),
  sign('archive', 0, [0x28, 0xb5, 0x2f, 0xfd], 'packed in a way that is not unpacked here', UNPACK),
  sign('archive', 0, [0x04, 0x22, 0x4d, 0x18], 'packed in a way that is not unpacked here', UNPACK),
  sign('archive', 257, 'ustar', 'an archive of a kind that is not unpacked here', UNPACK),
  sign('columns', 0, 'PAR1', 'a Parquet table', CONVERT),
  sign('columns', 0, 'ARROW1', 'an Arrow table', CONVERT),
  sign('columns', 0, [0x89, 0x48, 0x44, 0x46, 0x0d, 0x0a], 'an HDF5 file', CONVERT),
  sign('columns', 512, [0x89, 0x48, 0x44, 0x46, 0x0d, 0x0a], 'an HDF5 file', CONVERT),
  sign('columns', 124, [0x00, 0x01, 0x49, 0x4d], 'a file of matrices (.mat)', CONVERT),
  sign('columns', 124, [0x01, 0x00, 0x4d, 0x49], 'a file of matrices (.mat)', CONVERT),
  sign('columns', 0, [0x93, 0x4e, 0x55, 0x4d, 0x50, 0x59], 'an array file (.npy)', CONVERT),
  sign('columns', 0, 'TDSm', 'a measurement file in binary form (.tdms)', CONVERT),
  sign('network', 0, [0xd4, 0xc3, 0xb2, 0xa1], 'a recording of network traffic', PLAYED),
  sign('network', 0, [0x0a, 0x0d, 0x0d, 0x0a], 'a recording of network traffic', PLAYED),
  sign('program', 0, [0x7f, 0x45, 0x4c, 0x46], 'a program', PLAYED),
  sign('program', 0, 'MZ', 'a program', PLAYED),
  sign('database', 0, 'SQLite format 3', 'a database', CONVERT),
];

/** An object with a name in it, or an array of numbers, arrays or objects; "[Header]" and "[1] 0.5" begin otherwise. */
const JSON_START = /^\uFEFF?\s*(?:\{\s*"[^"\n]{0,80}"\s*:|\[\s*(?:[[{]|-?\d[\d.eE+-]*\s*,))/;

/** The refusal for a file that is plainly something else, by its first bytes; null where it is not. */
export function knownOther(name: string, bytes: Uint8Array): Problem | null {
  for (const { id, at, bytes: wanted, kind, doNext } of SIGNATURES) {
    if (!wanted.every((byte, i) => bytes[at + i] === byte)) continue;
    // Two letters are no proof: a text may begin with BM or MZ.
    if (wanted.length === 2 && !bytes.subarray(0, 64).some((byte) => byte < 9)) continue;
    return REFUSALS.knownOther(name, id, kind, doNext);
  }
  if (JSON_START.test(decodeText(bytes, 0, Math.min(bytes.length, 400), 'utf8')))
    return REFUSALS.knownOther(name, 'markup', 'a JSON document', ROWS);
  return null;
}

function sign(id: string, at: number, bytes: string | readonly number[], kind: string, doNext: string): Signature {
  const codes = typeof bytes === 'string' ? Array.from(bytes, (letter) => letter.charCodeAt(0)) : bytes;
  return { id, at, bytes: codes, kind, doNext };
}
