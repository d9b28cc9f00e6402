import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstLines } from '../../../../core/reading/firstLines.ts';
import { readCapture } from '../../../../core/reading/readCapture.ts';
import { bytesSource } from '../../../support/bytesSource.ts';

async function* chunksOf(bytes: Uint8Array, size: number): AsyncGenerator<Uint8Array, void, undefined> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

async function taken(bytes: Uint8Array, size: number, most: number): Promise<Buffer> {
  const parts: Uint8Array[] = [];
  for await (const part of firstLines(chunksOf(bytes, size), most)) parts.push(part);
  return Buffer.concat(parts);
}

describe('the first lines of a text', () => {
  it.each([
    ['line feeds', Buffer.from('ab\ncd\nef\n'), 5, 'ab\n'],
    ['both', Buffer.from('ab\r\ncd\r\nef'), 9, 'ab\r\ncd\r\n'],
    ['carriage returns', Buffer.from('ab\rcd\ref'), 7, 'ab\rcd\r'],
    ['no line end at all', Buffer.from('abcdefgh'), 5, 'abcde'],
    ['a text that is shorter', Buffer.from('ab\ncd'), 50, 'ab\ncd'],
  ])('end with a whole line: %s', async (_words, bytes, most, expected) => {
    expect((await taken(bytes, 100, most)).toString('latin1')).toBe(expected);
  });

  it('halve no character of UTF-16, low byte first', async () => {
    const bytes = Buffer.from('ab\ncd\nef', 'utf16le');
    expect((await taken(bytes, 100, 11)).toString('utf16le')).toBe('ab\n');
    expect((await taken(bytes, 100, 12)).toString('utf16le')).toBe('ab\ncd\n');
  });

  it('halve no character of UTF-16, high byte first', async () => {
    const bytes = Buffer.from('ab\ncd\nef', 'utf16le').swap16();
    expect((await taken(bytes, 100, 14)).swap16().toString('utf16le')).toBe('ab\ncd\n');
  });

  it('are where the text begins, whatever its chunks', () =>
    fc.assert(
      fc.asyncProperty(
        fc.array(fc.stringMatching(/^[0-9,.]{0,8}$/), { minLength: 1, maxLength: 30 }),
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 1, max: 200 }),
        async (lines, size, most) => {
          const text = `${lines.join('\n')}\n`;
          const part = (await taken(Buffer.from(text), size, most)).toString();
          expect(text.startsWith(part)).toBe(true);
          expect(part.length).toBeLessThanOrEqual(most);
        },
      ),
    ));
});

describe('reading only the beginning of a capture', () => {
  const rows = Array.from({ length: 5000 }, (_, i) => `${(i / 10).toFixed(1)},${((i % 17) / 20).toFixed(3)}`);
  const bytes = Buffer.from(['Time (s),O2 B1S1 (V)', ...rows, ''].join('\n'));

  it('gives the rows that the whole begins with, and ends with a whole number', async () => {
    const whole = await readCapture(bytesSource('a.csv', bytes), { choice: null });
    const part = await readCapture(bytesSource('a.csv', bytes), { choice: null, mostBytes: 20_000 });
    if (!whole.ok || !part.ok) throw new Error('could not be read');
    const [all, first] = [whole.value.capture.channels[0]?.values, part.value.capture.channels[0]?.values];
    const count = bytes.subarray(0, 20_000).toString().split('\n').length - 2;
    expect(first).toHaveLength(count);
    expect(first).toEqual(all?.slice(0, count));
    expect(part.value.capture.warnings).toEqual(whole.value.capture.warnings);
  });
});
