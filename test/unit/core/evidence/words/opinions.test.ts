import { describe, expect, it } from 'vitest';
import {
  coreSaidWords,
  differenceSentence,
  restingWords,
  SIGNING_DOES_NOT_SHOW,
  SIGNING_SHOWS,
  sureWords,
} from '../../../../../core/evidence/words/opinions.ts';
import { compareOpinions, type OpinionsCompared } from '../../../../../core/opinions/compareOpinions.ts';
import { opinionsOf } from '../../../../../core/opinions/withdrawn.ts';
import { keptRecord } from '../../../../support/keptRecord.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const record = keptRecord();
const [first, second] = opinionsOf(Object.values(record.opinions));
if (first === undefined || second === undefined) throw new Error('the kept record has two opinions');
const [window] = first.windows;
if (window === undefined) throw new Error('the first of them rests on a window');
const sentence = (differs: OpinionsCompared['differs']) =>
  plain(differenceSentence({ pairs: [], onlyFirst: [window], onlySecond: [], differs }, ','));

describe('words for opinions', () => {
  it('say how sure in number and word', () => {
    expect(plain(sureWords(first))).toBe('85 % sure: very likely');
  });

  it('name a window by its capture, or by the hash of one that is not here', () => {
    expect(plain(restingWords(window, record, ','))).toBe('Hold, 61,2 to 121,2 s, bank 1, van-before.csv');
    expect(restingWords(window, { ...record, captures: {} }, '.')).toContain('not here (SHA-256 ba7816bf8f01…)');
  });

  it('say what the core said, and of which bank where there are two', () => {
    expect(plain(coreSaidWords(window, '.'))).toBe('does not store oxygen, 97 % sure, version 0.1.0');
    const weak = { ...window, coreSaid: window.coreSaid.map((said) => ({ ...said, finding: 'weak' as const })) };
    expect(plain(coreSaidWords(weak, ','))).toBe(
      'stores weakly, 97 % that it does not store, which is said from 97,5 % on, version 0.1.0',
    );
    const [said] = window.coreSaid;
    if (said === undefined) throw new Error('the core said something');
    const two = { ...window, coreSaid: [said, { ...said, bank: 2 as const, probabilityNotStoring: null }] };
    expect(plain(coreSaidWords(two, '.'))).toMatch(/^bank 1: .*; bank 2: does not store oxygen, version/);
    expect(coreSaidWords({ ...window, coreSaid: [] }, '.')).toBe('not scored');
  });

  it('name what differs first', () => {
    expect(plain(differenceSentence(compareOpinions(first, second), '.'))).toMatch(/same windows.*judge differently/);
    expect(sentence({ kind: 'window' })).toContain('1 only under the first, 0 only under the second');
    expect(sentence({ kind: 'condition', id: 'engineWarm', first: true, second: null })).toMatch(
      /condition differently: Engine warm, ✓ met against – not recorded/,
    );
    expect(sentence({ kind: 'measure', id: 'upstreamSwitchHz', first: 1.424, second: null })).toMatch(
      /1,42 Hz against none/,
    );
    expect(sentence({ kind: 'core', first: '0.1.0', second: '0.2.0' })).toContain('version 0.1.0 against 0.2.0');
  });

  it('promise no proof of identity', () => {
    expect(SIGNING_DOES_NOT_SHOW).toContain('does not show who signed, or when');
    expect(SIGNING_DOES_NOT_SHOW).toContain('whoever can change the files can make a new chain');
    expect(SIGNING_SHOWS).toContain('vouched for by nobody');
  });
});
