import { chmodSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test, vi } from 'vitest';
import {
  installedNames,
  isDebian,
  missingPackages,
  nameOfEach,
  wantedPackages,
} from '../../../../main/setup/systemPackages.mjs';

const names = (needs: Parameters<typeof wantedPackages>[0]) => wantedPackages(needs).map(([name]) => name);

describe('which system packages a command needs', () => {
  test('the headless command and the build need none', () => {
    expect(wantedPackages({})).toEqual([]);
  });

  test('a window on a screen needs libraries and a font, and no hidden screen', () => {
    expect(names({ window: true })).toEqual(expect.arrayContaining(['libgtk-3-0', 'libnss3', 'fonts-dejavu-core']));
    expect(names({ window: true })).not.toContain('xvfb');
  });

  test('a picture needs a hidden screen too, and only the tests need a browser', () => {
    expect(names({ window: true, hiddenScreen: true })).toEqual(
      expect.arrayContaining(['libgtk-3-0', 'xvfb', 'xauth']),
    );
    expect(names({ window: true, hiddenScreen: true })).not.toContain('chromium');
    expect(names({ tests: true })).toEqual(expect.arrayContaining(['libgbm1', 'xvfb', 'chromium']));
  });
});

describe('what is missing', () => {
  test('a package counts under any of its names: the library transition of 2024 renamed some', () => {
    const installed = new Set(['libgtk-3-0t64', 'libnss3']);
    expect(missingPackages([['libgtk-3-0', 'libgtk-3-0t64'], ['libnss3'], ['xvfb']], installed)).toEqual([['xvfb']]);
  });

  test('nothing is missing where all is there', () => {
    const wanted = wantedPackages({ tests: true });
    expect(missingPackages(wanted, new Set(wanted.map((row) => row.at(-1) ?? '')))).toEqual([]);
  });

  test('the list of dpkg-query: installed, removed with settings left, half installed, with an architecture', () => {
    const listing = 'xvfb\tii \nxauth\trc \nlibnss3\tiU \nlibgbm1:amd64\tii \n\n';
    expect([...installedNames(listing)]).toEqual(['xvfb', 'libgbm1']);
  });
});

describe('what a package is called in this release', () => {
  afterEach(() => vi.unstubAllEnvs());

  test('is asked of apt, whatever language it speaks', async () => {
    // After the library transition of 2024 the old name has no candidate. In German apt says so in German.
    const folder = mkdtempSync(join(tmpdir(), 'tailtrace-apt-'));
    const candidate = '$([ "$LC_ALL" = C ] && echo "Candidate:" || echo "Installationskandidat:")';
    const script = `#!/bin/sh\ncase "$2" in *t64) echo "  ${candidate} 1.0" ;; *) echo "  ${candidate} (none)" ;; esac\n`;
    writeFileSync(join(folder, 'apt-cache'), script);
    chmodSync(join(folder, 'apt-cache'), 0o755);
    vi.stubEnv('PATH', `${folder}:${process.env.PATH}`);
    vi.stubEnv('LC_ALL', 'de_DE.UTF-8');
    expect(await nameOfEach([['libgtk-3-0', 'libgtk-3-0t64'], ['xvfb']])).toEqual(['libgtk-3-0t64', 'xvfb']);
  });
});

describe('which systems are looked at', () => {
  test.each([
    ['ID=debian\nVERSION_ID="12"', true],
    ['NAME="Ubuntu"\nID=ubuntu\nID_LIKE=debian', true],
    ['ID=linuxmint\nID_LIKE="ubuntu debian"', true],
    ['ID=fedora\nID_LIKE="rhel"', false],
    ['', false],
  ])('%j: %s', (osRelease, debian) => {
    expect(isDebian(osRelease)).toBe(debian);
  });
});
