import fc from 'fast-check';

/** One way of spoiling a file: what flaky disks, wrong tools and strangers do to it. */
export type Mutation =
  | { readonly kind: 'flip'; readonly at: number; readonly bits: number }
  | { readonly kind: 'cut'; readonly at: number }
  | { readonly kind: 'remove'; readonly at: number; readonly length: number }
  | { readonly kind: 'repeat'; readonly at: number; readonly length: number; readonly times: number }
  | { readonly kind: 'insert'; readonly at: number; readonly bytes: Uint8Array }
  | { readonly kind: 'swapPairs' };

/** Pieces of text that readers stumble over. */
const PIECES = [
  '"',
  '""',
  ',',
  ';',
  '\t',
  '\n',
  '\r',
  '\r\n',
  '\u0000',
  '\uFEFF',
  '-',
  '--',
  '1e999',
  '-1e999',
  'NaN',
  'Infinity',
  '0x10',
  '9'.repeat(40),
  '.',
  '1.2.3',
  '23:59:60',
  '2023-02-29',
  '(',
  ')',
  'Time',
  'O2 B1S1',
  '=1+1',
  ' ',
  '   ',
  'é',
];

const at = fc.nat({ max: 1_000_000 });

export const mutation: fc.Arbitrary<Mutation> = fc.oneof(
  fc.record({ kind: fc.constant('flip' as const), at, bits: fc.integer({ min: 1, max: 255 }) }),
  fc.record({ kind: fc.constant('cut' as const), at }),
  fc.record({ kind: fc.constant('remove' as const), at, length: fc.integer({ min: 1, max: 40 }) }),
  fc.record({
    kind: fc.constant('repeat' as const),
    at,
    length: fc.integer({ min: 1, max: 200 }),
    times: fc.integer({ min: 2, max: 60 }),
  }),
  fc.record({
    kind: fc.constant('insert' as const),
    at,
    bytes: fc.constantFrom(...PIECES).map((piece) => new TextEncoder().encode(piece)),
  }),
  fc.record({ kind: fc.constant('insert' as const), at, bytes: fc.uint8Array({ minLength: 1, maxLength: 12 }) }),
  fc.record({ kind: fc.constant('swapPairs' as const) }),
);

/** The bytes after one mutation; places are taken modulo the length. */
export function mutate(bytes: Uint8Array, change: Mutation): Uint8Array {
  const place = 'at' in change ? change.at % (bytes.length + 1) : 0;
  const before = bytes.subarray(0, place);
  switch (change.kind) {
    case 'flip':
      return bytes.map((byte, i) => (i === place ? byte ^ change.bits : byte));
    case 'cut':
      return before.slice();
    case 'remove':
      return Uint8Array.of(...before, ...bytes.subarray(place + change.length));
    case 'repeat': {
      const piece = Array.from({ length: change.times }, () => [
        ...bytes.subarray(place, place + change.length),
      ]).flat();
      return Uint8Array.of(...before, ...piece, ...bytes.subarray(place + change.length));
    }
    case 'insert':
      return Uint8Array.of(...before, ...change.bytes, ...bytes.subarray(place));
    case 'swapPairs':
      return bytes.map((_, i) => bytes[i ^ 1] ?? 0);
  }
}
