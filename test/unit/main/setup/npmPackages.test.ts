import { describe, expect, test } from 'vitest';
import { sameAsInstalled } from '../../../../main/setup/npmPackages.mjs';

const entry = (version: string, more: object = {}) => ({ version, integrity: `sha512-${version}`, ...more });
const lock = (packages: Record<string, object>) => ({ packages: { '': {}, ...packages } });
const installed = (packages: Record<string, object>) => ({ packages });

describe('whether the installed npm packages are the wanted ones', () => {
  const wanted = lock({ 'node_modules/a': entry('1.0.0'), 'node_modules/b': entry('2.0.0', { optional: true }) });

  test('the same ones are; an optional one for another system may be missing', () => {
    expect(
      sameAsInstalled(wanted, installed({ 'node_modules/a': entry('1.0.0'), 'node_modules/b': entry('2.0.0') })),
    ).toBe(true);
    expect(sameAsInstalled(wanted, installed({ 'node_modules/a': entry('1.0.0') }))).toBe(true);
  });

  test.each([
    ['nothing installed, or an installation that did not finish', null],
    ['another version', installed({ 'node_modules/a': entry('1.0.1') })],
    [
      'the same version from another place',
      installed({ 'node_modules/a': { version: '1.0.0', integrity: 'sha512-x' } }),
    ],
    ['one that is missing', installed({ 'node_modules/b': entry('2.0.0') })],
    ['one that nobody asked for', installed({ 'node_modules/a': entry('1.0.0'), 'node_modules/c': entry('3.0.0') })],
    [
      'an optional one of another version',
      installed({ 'node_modules/a': entry('1.0.0'), 'node_modules/b': entry('1.9.0') }),
    ],
  ])('%s: not the same', (_what, there) => {
    expect(sameAsInstalled(wanted, there)).toBe(false);
  });

  test('without a lock file nothing is known', () => {
    expect(sameAsInstalled(null, installed({}))).toBe(false);
  });
});
