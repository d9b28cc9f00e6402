import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseGuardedJson } from '../../../../core/record/guardedJson.ts';

const LIMITS = { characters: 10_000, depth: 20 };
const faultOf = (text: string, limits = LIMITS) => {
  const read = parseGuardedJson(text, limits);
  return read.ok ? null : read.fault.kind;
};

describe('T-OPEN-8: JSON from outside', () => {
  test.each([
    ['larger than the limit', `"${'x'.repeat(10_000)}"`, 'tooLarge'],
    ['nested 21 deep', '['.repeat(21) + ']'.repeat(21), 'tooDeep'],
    ['the same key twice', '{"a":1,"b":{"a":2},"a":3}', 'doubledKey'],
    ['the same key twice, once escaped', '{"a":1,"\\u0061":2}', 'doubledKey'],
    ['__proto__', '{"__proto__":{"polluted":true}}', 'forbiddenKey'],
    ['__proto__, escaped', '{"\\u005f_proto__":{"polluted":true}}', 'forbiddenKey'],
    ['constructor deep inside', '[{"x":[{"constructor":1}]}]', 'forbiddenKey'],
    ['a number too large', '{"a":1e400}', 'notFinite'],
    ['a number too small below', '[-1e999]', 'notFinite'],
    ['half a pair, escaped', '["\\ud83d"]', 'loneSurrogate'],
    ['half a pair, raw', '["\ud83d"]', 'loneSurrogate'],
    ['half a pair as a key', '{"\\udc00":1}', 'loneSurrogate'],
    ['NaN', '{"a":NaN}', 'notJson'],
    ['nothing', '', 'notJson'],
    ['cut off', '{"a":[1,2', 'notJson'],
    ['cut off in a string', '{"a":"b', 'notJson'],
    ['cut off behind a backslash', '{"a":"b\\', 'notJson'],
    ['two values', '{} {}', 'notJson'],
    ['not JSON at all', '\u0089PNG\r\n\u001a\n', 'notJson'],
  ])('refuses %s', (_, text, kind) => {
    expect(faultOf(text)).toBe(kind);
  });

  test.each([
    ['the same key in two objects', '[{"a":1},{"a":2}]'],
    ['a key that is also a value', '{"a":"a","b":"a"}'],
    ['the word __proto__ as a value', '["__proto__",{"a":"constructor"}]'],
    ['1e400 inside a text', '["1e400"]'],
    ['brackets and quotes inside a text', '["{[\\"","}]",{"k\\"":"[[["}]'],
    ['a whole pair', '["\\ud83d\\ude00"]'],
    ['20 deep', '['.repeat(20) + ']'.repeat(20)],
  ])('takes %s', (_, text) => {
    expect(parseGuardedJson(text, LIMITS)).toEqual({ ok: true, value: JSON.parse(text) });
  });

  test('a byte order mark at the start is passed over', () => {
    expect(parseGuardedJson('\ufeff[1]', LIMITS)).toEqual({ ok: true, value: [1] });
  });

  test('100,000 levels neither overflow the stack nor are parsed', () => {
    expect(faultOf('['.repeat(100_000), { characters: 1e6, depth: 64 })).toBe('tooDeep');
  });

  test('any JSON that is fair comes out as JSON.parse gives it, and no prototype is ever changed', () => {
    const before = Object.getOwnPropertyNames(Object.prototype).sort();
    fc.assert(
      fc.property(fc.json({ maxDepth: 6 }), (text) => {
        const read = parseGuardedJson(text, LIMITS);
        if (read.ok) expect(read.value).toEqual(JSON.parse(text));
        else expect(text).toMatch(/__proto__|constructor|prototype|\\u/);
      }),
      { numRuns: 2000 },
    );
    expect(Object.getOwnPropertyNames(Object.prototype).sort()).toEqual(before);
  });

  test('no text makes it throw', () => {
    const scraps = fc.array(fc.constantFrom('{', '}', '[', ']', '"', '\\', ',', ':', '1e', '-', '\\u00', 'a', '\n'));
    fc.assert(
      fc.property(scraps, (parts) => {
        expect(typeof parseGuardedJson(parts.join(''), LIMITS).ok).toBe('boolean');
      }),
      { numRuns: 2000 },
    );
  });
});
