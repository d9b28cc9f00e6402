import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TIME_FORMS, timeFormOf } from '../../../../core/reading/timeForms/index.ts';

const bytesOf = (text: string) => new TextEncoder().encode(text);

describe.each(TIME_FORMS.map((form) => [form.id, form] as const))('the time form %s', (_, form) => {
  it.each(form.examples)('reads %s as %f s', (text, seconds) => {
    expect(form.parse(text)).toBe(seconds);
    expect(form.parse(` ${text}`.trim())).toBe(seconds);
  });

  it.each(form.examples)('is the one that is found for %s', (text, seconds) => {
    expect(timeFormOf(text)?.parse(text)).toBe(seconds);
  });

  it('reads from bytes what it reads from text, or leaves it', () => {
    for (const [text, seconds] of form.examples) {
      const bytes = bytesOf(`;${text};`);
      const quick = form.quick?.(bytes, 1, bytes.length - 1) ?? Number.NaN;
      if (!Number.isNaN(quick)) expect(quick).toBe(seconds);
    }
  });

  it('agrees with itself on any text, from bytes and from letters', () => {
    const letters = fc.constantFrom(...'0123456789:.,-/TZ+ apm');
    fc.assert(
      fc.property(fc.string({ unit: letters, maxLength: 30 }), (text) => {
        const bytes = bytesOf(text);
        const quick = form.quick?.(bytes, 0, bytes.length) ?? Number.NaN;
        if (!Number.isNaN(quick)) expect(quick).toBe(form.parse(text));
      }),
      { numRuns: 2000 },
    );
  });

  it('never throws and never gives an infinity', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 60 }), (text) => {
        expect(Math.abs(form.parse(text))).not.toBe(Number.POSITIVE_INFINITY);
      }),
    );
  });
});

describe('finding a time form', () => {
  it.each([
    '',
    '12',
    '1.5',
    '-0.31',
    '2023-02-29',
    '2023-13-01',
    '25:00:00',
    '12:60:00',
    'Bank 1',
    '1/2',
    'sensor 1-2',
  ])('finds none in "%s"', (text) => {
    expect(timeFormOf(text)).toBeNull();
  });

  it('lists no id twice', () => {
    expect(new Set(TIME_FORMS.map(({ id }) => id)).size).toBe(TIME_FORMS.length);
  });
});
