import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readStartArguments } from '../../../../main/setup/startArguments.mjs';

const FOLDER = resolve('/somewhere');
const read = (...words: string[]) => readStartArguments(words, FOLDER);

describe('what stands behind npm start --', () => {
  test('nothing: the window', () => {
    expect(read()).toEqual({ snapshot: null, size: '1280x800', given: [] });
  });

  test('captures are found from the folder in which the command was typed', () => {
    expect(read('drive.csv', '/else/b.csv').given).toEqual([resolve(FOLDER, 'drive.csv'), resolve('/else/b.csv')]);
  });

  test('flags of the program go through as they are', () => {
    expect(read('--some-flag=1', 'a.csv').given).toEqual(['--some-flag=1', resolve(FOLDER, 'a.csv')]);
  });

  test.each([
    [['--snapshot', 'a.png', '--size', '1920x1080', 'd.csv']],
    [['--snapshot=a.png', '--size=1920x1080', 'd.csv']],
    [['d.csv', '--size', '1920x1080', '--snapshot', 'a.png']],
  ])('a picture: %j', (words) => {
    expect(read(...words)).toEqual({
      snapshot: resolve(FOLDER, 'a.png'),
      size: '1920x1080',
      given: [resolve(FOLDER, 'd.csv')],
    });
  });

  test.each([
    [['--snapshot'], '--snapshot names no file'],
    [['--snapshot', 'a.jpg'], 'makes a PNG picture, not a.jpg'],
    [['--size', '1280'], '1280 is not a size'],
    [['--size', '100x100'], '100x100 is not a size'],
    [['--size', '9000x9000'], '9000x9000 is not a size'],
    [['--size'], 'nothing is not a size'],
  ])('%j is refused in words: %s', (words, said) => {
    expect(() => read(...words)).toThrow(said);
  });
});
