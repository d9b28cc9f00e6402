// RFC 4180 (2005), section 2: the seven rules, each with its example turned into a small recording. Check 7.01.

import { describe, expect, it } from 'vitest';
import { readCapture } from '../../core/reading/readCapture.ts';
import { bytesSource } from '../support/bytesSource.ts';

async function read(text: string) {
  const outcome = await readCapture(bytesSource('rfc.csv', text, 5), { choice: null });
  if (!outcome.ok) throw new Error(outcome.problem.what);
  const { channels, rows } = outcome.value.capture;
  return { rows, names: channels.map(({ name }) => name), values: channels.map(({ values }) => [...values]) };
}

const ROWS = '0.0,1,4\r\n0.1,2,5\r\n0.2,3,6';
const VALUES = [
  [1, 2, 3],
  [4, 5, 6],
];

describe('RFC 4180', () => {
  it('rule 1: records end in CRLF', async () => {
    expect(await read(`t (s),a,b\r\n${ROWS}\r\n`)).toEqual({ rows: 3, names: ['a', 'b'], values: VALUES });
  });

  it('rule 2: the last record may lack its line end', async () => {
    expect((await read(`t (s),a,b\r\n${ROWS}`)).values).toEqual(VALUES);
  });

  it('rule 3: the header is optional', async () => {
    expect((await read(`${ROWS}\r\n0.3,4,7\r\n0.4,5,8\r\n`)).values).toEqual([
      [1, 2, 3, 4, 5],
      [4, 5, 6, 7, 8],
    ]);
  });

  it('rule 4: spaces belong to a field, and mean nothing to a number', async () => {
    expect((await read(`t (s), a , b\r\n${ROWS.replaceAll(',', ' , ')}\r\n`)).values).toEqual(VALUES);
  });

  it('rule 5: fields may be quoted', async () => {
    const quoted = ROWS.replace(/[^,\r\n]+/g, '"$&"');
    expect(await read(`"t (s)","a","b"\r\n${quoted}\r\n`)).toEqual({ rows: 3, names: ['a', 'b'], values: VALUES });
  });

  it('rule 6: quoted fields may hold line ends and delimiters', async () => {
    const notes = ROWS.replace(/\r\n|$/g, ',"two\r\nlines, and a comma"$&');
    expect(await read(`"t\r\n(s)",a,b,note\r\n${notes}\r\n`)).toEqual({ rows: 3, names: ['a', 'b'], values: VALUES });
  });

  it('rule 7: a quote in a quoted field is doubled', async () => {
    const notes = ROWS.replace(/\r\n|$/g, ',"a ""b"", c"$&');
    expect(await read(`t (s),"the ""a""",b,note\r\n${notes}\r\n`)).toEqual({
      rows: 3,
      names: ['the "a"', 'b'],
      values: VALUES,
    });
  });

  it('numbers after quoted notes stay in their own columns', async () => {
    const notes = ROWS.replace(/^([^,]+),/gm, '$1,"x, ""y""",');
    expect((await read(`t (s),note,a,b\r\n${notes}\r\n`)).values).toEqual(VALUES);
  });
});
