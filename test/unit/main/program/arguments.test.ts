import { describe, expect, it } from 'vitest';
import { readArguments } from '../../../../main/program/arguments.ts';

const read = (...words: string[]) => readArguments(words, '/home/reader', '/program');

describe('what the program was started with', () => {
  it('captures, relative ones counted from the folder of the start', () => {
    expect(read('van.csv', '/drives/a.tsv').captures).toEqual(['/home/reader/van.csv', '/drives/a.tsv']);
  });

  it('neither its own folder nor a switch of the runtime is a capture', () => {
    const words = ['--inspect=0', '/program', '--remote-debugging-port=0', '-psn_0_1', 'van.csv', '--no-sandbox'];
    expect(read(...words).captures).toEqual(['/home/reader/van.csv']);
  });

  it.each([
    [['--snapshot=/a.png'], { picture: '/a.png', width: 1280, height: 800 }],
    [['--snapshot=/a.png', '--snapshot-size=1920x1080'], { picture: '/a.png', width: 1920, height: 1080 }],
    [['--snapshot=/a.png', '--snapshot-size=big'], { picture: '/a.png', width: 1280, height: 800 }],
    [['--snapshot='], null],
    [[], null],
  ])('%j makes the picture %j', (words, snapshot) => {
    expect(read(...words).snapshot).toEqual(snapshot);
  });

  it.each([
    [['--print-sheet=/a.html', '--print-to=/a.pdf'], { sheet: '/a.html', pdf: '/a.pdf', paper: 'A4' }],
    [
      ['--print-sheet=/a.html', '--print-to=/a.pdf', '--paper=Letter'],
      { sheet: '/a.html', pdf: '/a.pdf', paper: 'Letter' },
    ],
    [['--print-sheet=/a.html'], null],
  ])('%j prints %j', (words, print) => {
    expect(read(...words).print).toEqual(print);
  });
});
