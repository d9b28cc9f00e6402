import { describe, expect, test } from 'vitest';
import { readArguments } from '../../../../main/command/arguments.ts';

const read = (...words: string[]) => readArguments(words);
const wrong = (...words: string[]) => {
  const found = read(...words);
  return found.kind === 'wrong' ? found.sentence : null;
};
const asked = (...words: string[]) => {
  const found = read(...words);
  if (found.kind !== 'score') throw new Error(`not understood: ${JSON.stringify(found)}`);
  return found.arguments;
};

describe('the words of the headless command', () => {
  test('captures alone', () => {
    expect(asked('a.csv', '-', 'b c.txt')).toEqual({
      captures: ['a.csv', '-', 'b c.txt'],
      json: false,
      describe: false,
      windows: null,
      temperatures: [],
      bank: null,
      columns: null,
      sheet: null,
      troubleCodes: [],
    });
  });

  test('every flag, in any place, with = or a blank', () => {
    const all = asked(
      '--json',
      '--window',
      '61.2..121.2',
      '--window=14:03:10..14:04:10',
      'a.csv',
      '--inlet',
      '290F',
      '--outlet',
      '385F',
      '--inlet=143,3 °C',
      '--outlet=196.1c',
      '--bank',
      '2',
      '--columns',
      'k.json',
      '--sheet',
      'out.PDF',
      '--trouble-codes',
      'p0420,P0171',
      '--trouble-codes',
      'P0420',
    );
    expect(all).toMatchObject({
      json: true,
      bank: 2,
      columns: 'k.json',
      sheet: { path: 'out.PDF', ending: 'pdf' },
      troubleCodes: ['P0420', 'P0171'],
      temperatures: [
        { inlet: { value: 290, unit: 'F' }, outlet: { value: 385, unit: 'F' } },
        { inlet: { value: 143.3, unit: 'C' }, outlet: { value: 196.1, unit: 'C' } },
      ],
    });
    expect(all.windows).toHaveLength(2);
  });

  test('what stands behind -- is a capture, also when it looks like a flag', () => {
    expect(asked('--', '--odd-name.csv').captures).toEqual(['--odd-name.csv']);
  });

  test.each([[['--help']], [['-h', 'a.csv']], [['--help', '--window', '1..2']]])('%j asks for help', (words) => {
    expect(read(...words).kind).toBe('help');
  });

  test('--version', () => {
    expect(read('--version').kind).toBe('version');
  });

  test.each([
    [[], 'Name at least one capture'],
    [['-', '-'], 'only once'],
    [['a', '--jason'], 'There is no flag --jason; there are --json'],
    [['a', '-x'], 'There is no flag -x'],
    [['a', '--json=yes'], '--json takes no value'],
    [['a', '--bank'], '--bank needs a value'],
    [['a', '--bank', '3'], '--bank 3 is no bank'],
    [['a', '--bank', '--json'], '--bank needs a value'],
    [['a', '--window', '5'], '--window 5 is no window'],
    [['a', '--window', '1..2..3'], 'is no window'],
    [['a', '--window', 'a..b'], 'is no window'],
    [['a', '--window', '..5'], 'is no window'],
    [['a', '--window', '25:00..26:00'], 'is no window'],
    [['a', '--window=-5..5'], 'is no window'],
    [['a', '--inlet', '290F'], 'Every --inlet needs its --outlet: there are 1 of the one and 0 of the other.'],
    [['a', '--inlet', '290', '--outlet', '385F'], '--inlet 290 is no temperature'],
    [['a', '--inlet', '290F', '--outlet', '9999F'], '--outlet 9999F is no temperature'],
    [['a', '--inlet', '-300C', '--outlet', '1C'], '--inlet needs a value'],
    [['a', '--inlet=-300C', '--outlet', '1C'], '--inlet -300C is no temperature'],
    [['a', '--sheet', 'out.docx'], 'ending that is not known: use .html, .pdf'],
    [['a', '--sheet', 'out'], 'ending that is not known'],
    [['a', '--describe', '--sheet', 'o.html'], 'nothing to put on a sheet'],
    [['a', '--trouble-codes', 'P0420,420'], '420 is no trouble code'],
  ])('%j is refused in one sentence', (words, part) => {
    const sentence = wrong(...words);
    expect(sentence).toContain(part);
    expect(sentence).toMatch(/^[^\n]+\.$/);
    expect(sentence).not.toMatch(/ERR_|undefined|TypeError|\bat \S+:\d/);
  });

  test('no words make it throw', () => {
    const odd = ['--', '-', '--=', '---', '--window=', '--bank=', '=', '', '-json', '--json=', '\u0000', '--inlet=F'];
    for (const one of odd) for (const two of odd) expect(() => read(one, two)).not.toThrow();
  });
});
