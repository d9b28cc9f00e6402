// RFC 8785, JSON Canonicalization Scheme (June 2020). Sections 3.2.2 and 3.2.3 and appendix B; the sample texts were
// written down from memory of the document and agree with the expected results given in the test files of another
// implementation (pkg.go.dev/github.com/gowebpki/jcs).

import { describe, expect, test } from 'vitest';
import { canonicalJson } from '../../core/record/canonical.ts';

describe('RFC 8785', () => {
  test('3.2.2: numbers, strings and literals', () => {
    const input = String.raw`{
      "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
      "literals": [null, true, false]
    }`;
    expect(canonicalJson(JSON.parse(input))).toBe(
      `{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],` +
        String.raw`"string":"€$\u000f\nA'B\"\\\\\"/"}`,
    );
  });

  test('3.2.3: keys are sorted by UTF-16 units', () => {
    const input = String.raw`{
      "\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh", "1": "One",
      "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control", "\u00f6": "Latin Small Letter O With Diaeresis"
    }`;
    const text = canonicalJson(JSON.parse(input));
    const order = [...text.matchAll(/:"([^"]*)"/g)].map((match) => match[1]);
    expect(order).toEqual([
      'Carriage Return',
      'One',
      'Control',
      'Latin Small Letter O With Diaeresis',
      'Euro Sign',
      'Emoji: Grinning Face',
      'Hebrew Letter Dalet With Dagesh',
    ]);
  });

  // Appendix B: the bits of a double and its text.
  test.each([
    ['0000000000000000', '0'],
    ['8000000000000000', '0'],
    ['0000000000000001', '5e-324'],
    ['8000000000000001', '-5e-324'],
    ['7fefffffffffffff', '1.7976931348623157e+308'],
    ['4340000000000000', '9007199254740992'],
    ['4430000000000000', '295147905179352830000'],
    ['44b52d02c7e14af5', '9.999999999999997e+22'],
    ['44b52d02c7e14af6', '1e+23'],
    ['44b52d02c7e14af7', '1.0000000000000001e+23'],
    ['444b1ae4d6e2ef4e', '999999999999999700000'],
    ['444b1ae4d6e2ef4f', '999999999999999900000'],
    ['444b1ae4d6e2ef50', '1e+21'],
    ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
    ['3eb0c6f7a0b5ed8d', '0.000001'],
    ['41b3de4355555553', '333333333.3333332'],
    ['41b3de4355555554', '333333333.33333325'],
    ['41b3de4355555555', '333333333.3333333'],
    ['41b3de4355555556', '333333333.3333334'],
    ['41b3de4355555557', '333333333.33333343'],
    ['becbf647612f3696', '-0.0000033333333333333333'],
    ['43143ff3c1cb0959', '1424953923781206.2'],
  ])('appendix B: %s is %s', (bits, text) => {
    const view = new DataView(new ArrayBuffer(8));
    view.setBigUint64(0, BigInt(`0x${bits}`));
    expect(canonicalJson(view.getFloat64(0))).toBe(text);
  });

  test.each([[Number.NaN], [Number.POSITIVE_INFINITY], [{ a: Number.NEGATIVE_INFINITY }], ['\ud800'], [undefined]])(
    'I-JSON only: %j has no canonical form',
    (value) => {
      expect(() => canonicalJson(value)).toThrow();
    },
  );
});
