// The guard of test/support/pureCore.ts must itself be able to fail: code that claims to lie in core is refused the clock
// and the dice, under any alias and through a library; code of the tests is not.

import { join } from 'node:path';
import { runInThisContext } from 'node:vm';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { asker } from '../support/pureCore.ts';

const ROOT = join(import.meta.dirname, '..', '..');

/** Compiles a function as if it were written in the given file. */
function planted(file: string, body: string): () => unknown {
  const made: unknown = runInThisContext(`(function planted() { ${body} })`, { filename: join(ROOT, file) });
  if (typeof made !== 'function') throw new Error('the planted code is not a function');
  return () => Reflect.apply(made, undefined, []);
}

describe('core without clock and dice', () => {
  test.each([
    ['Math.random()', 'return Math.random();'],
    ['Math.random()', 'const dice = Math.random; return dice();'],
    ['Date.now()', 'return Date.now();'],
    ['Date.now()', 'const { now } = Date; return now();'],
    ['new Date()', 'return new Date();'],
    ['new Date()', 'return Reflect.construct(Date, []);'],
    ['Date()', 'return Date();'],
    ['Math.random()', 'return [3, 1, 2].map(() => Math.random());'],
  ])('%s is refused to core: %s', (what, body) => {
    expect(planted('core/signal/planted.ts', body)).toThrow(`core/signal/planted.ts asked for ${what}`);
  });

  test('a moment that is given may be read', () => {
    expect(planted('core/record/planted.ts', 'return new Date(0).toISOString();')()).toBe('1970-01-01T00:00:00.000Z');
  });

  test('the shell and the tests have a clock', () => {
    expect(planted('main/planted.ts', 'return typeof Date.now() + typeof Math.random();')()).toBe('numbernumber');
    expect(new Date()).toBeInstanceOf(Date);
    expect(Number.isFinite(Math.random())).toBe(true);
  });

  test('a library that asks on behalf of core is refused, and its own frames are passed over', () => {
    const stack = [
      'Error: Date.now()',
      `    at Object.now (${ROOT}/test/support/pureCore.ts:10:1)`,
      `    at zip (${ROOT}/node_modules/fflate/esm/index.mjs:2:3)`,
      '    at new Promise (<anonymous>)',
      `    at async writeBundle (${ROOT}/core/evidence/bundle.ts:4:5)`,
      `    at ${ROOT}/test/unit/core/evidence/bundle.test.ts:6:7`,
    ].join('\n');
    expect(asker(stack)).toBe(join(ROOT, 'core/evidence/bundle.ts'));
  });

  test('fast-check draws the same cases each time', () => {
    const draw = () => fc.sample(fc.integer(), { numRuns: 8, seed: fc.readConfigureGlobal().seed ?? 0 });
    expect(fc.readConfigureGlobal().seed).toBeTypeOf('number');
    expect(draw()).toEqual(draw());
  });
});
