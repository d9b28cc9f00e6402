import { describe, expect, it } from 'vitest';
import { alikeNumbers, MOST_DIGITS } from '../../../../../core/reading/text/alikeNumbers.ts';

const LEAD = '12345678'; // what is looked at before a number, and must not count
const POINT = 46;
const COMMA = 44;

function digits(count: number, from: number): string {
  return Array.from({ length: count }, (_, i) => String((from + 7 * i) % 10)).join('');
}

const forms = [false, true].flatMap((negative) =>
  Array.from({ length: MOST_DIGITS }, (_, w) => w + 1).flatMap((whole) =>
    Array.from({ length: MOST_DIGITS + 1 }, (_, fraction) => ({ negative, whole, fraction })),
  ),
);
const exact = forms.filter(({ whole, fraction }) => whole + fraction <= 15);

function written({ negative, whole, fraction }: (typeof forms)[number], from: number): string {
  return `${negative ? '-' : ''}${digits(whole, from)}${fraction === 0 ? '' : `.${digits(fraction, from + 3)}`}`;
}

function read(text: string | Uint8Array, form: (typeof forms)[number], length: number, rows: number) {
  const bytes = typeof text === 'string' ? new TextEncoder().encode(text) : text;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const values = new Float64Array(2 * rows).fill(Number.NaN);
  const got = alikeNumbers(view, LEAD.length, length + 1, rows, form, POINT, COMMA, values, 1, 2);
  return { got, values };
}

describe('alikeNumbers', () => {
  it('gives what Number() gives, for every form of up to 15 digits', () => {
    for (const form of exact) {
      const texts = Array.from({ length: 10 }, (_, i) => written(form, i));
      const { got, values } = read(
        `${LEAD}${texts.map((text) => `${text},`).join('')}`,
        form,
        texts[0]?.length ?? 0,
        10,
      );
      expect(got).toBe(10);
      texts.forEach((text, i) => void expect(Object.is(values[2 * i + 1], Number(text)), text).toBe(true));
      // The places between belong to other columns.
      expect(values.filter((_, i) => i % 2 === 0).every(Number.isNaN)).toBe(true);
    }
  });

  it('reads a negative nought as Number() does', () => {
    const form = { negative: true, whole: 1, fraction: 2 };
    expect(Object.is(read(`${LEAD}-0.00,`, form, 5, 1).values[1], -0)).toBe(true);
  });

  it.each([
    { negative: false, whole: 1, fraction: 0 },
    { negative: false, whole: 4, fraction: 3 },
    { negative: true, whole: 2, fraction: 4 },
    { negative: true, whole: 7, fraction: 8 },
    { negative: false, whole: 8, fraction: 0 },
  ])('takes no other byte in any place: %o', (form) => {
    const text = written(form, 1);
    for (let at = 0; at <= text.length; at++) {
      const own = `${text},`.charCodeAt(at);
      const isDigit = own >= 48 && own <= 57;
      for (let byte = 0; byte < 256; byte++) {
        const bytes = new TextEncoder().encode(`${LEAD}${text},`);
        bytes[LEAD.length + at] = byte;
        const fits = byte === own || (isDigit && byte >= 48 && byte <= 57);
        expect(read(bytes, form, text.length, 1).got, `byte ${byte} at ${at}`).toBe(fits ? 1 : 0);
      }
    }
  });

  it('stops at the first row that is written otherwise', () => {
    const form = { negative: false, whole: 1, fraction: 1 };
    expect(read(`${LEAD}1.5,2.5,12.5,3.5,`, form, 3, 4).got).toBe(2);
    expect(read(`${LEAD}1.5,2.5, .5,3.5,`, form, 3, 4).got).toBe(2);
  });
});
