import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { AnswerCollector } from '../../../../../core/reading/socketcan/answers.ts';
import { logLine } from '../../../../../core/reading/socketcan/logLine.ts';

/** The log of checks 1.35, 1.40 to 1.43: worked by hand in the terms of ISO 15765-2 and SAE J1979. */
const LOG = readFileSync(new URL('../../../../reference/values/socketcan.log', import.meta.url), 'utf8');

function collect(text: string): AnswerCollector {
  const collector = new AnswerCollector();
  for (const line of text.split('\n')) {
    const frame = logLine(line);
    if (frame) collector.take(frame);
  }
  return collector;
}

describe('logLine', () => {
  it('reads the published example (check 1.43)', () => {
    expect(logLine('(1700000001.012000) can0 7E8#0441149085AAAAAA')).toEqual({
      timeS: 1700000001.012,
      bus: 'can0',
      identifier: 0x7e8,
      extended: false,
      data: Uint8Array.from([0x04, 0x41, 0x14, 0x90, 0x85, 0xaa, 0xaa, 0xaa]),
    });
  });

  it.each([
    ['(1.5) vcan0 18DAF110#0341057B T', true, 4],
    ['(1.5) can0 104#R', false, 0],
    ['(1.5) can0 104#R8', false, 0],
    ['(1.5) can0 123##1DEADBEEF', false, 4],
    ['(1.5) can0 7E8#', false, 0],
  ] as const)('takes %s', (line, extended, length) => {
    expect(logLine(line)).toMatchObject({ extended });
    expect(logLine(line)?.data).toHaveLength(length);
  });

  it.each(['', '# comment', '(1.5) can0 7E8#012', '(1.5) can0 7E#01', '1.5 can0 7E8#01', '(x) can0 7E8#01'])(
    'leaves "%s" alone',
    (line) => expect(logLine(line)).toBeNull(),
  );
});

describe('AnswerCollector', () => {
  it('finds the vehicle number, the sensors, the coolant and the refusal of the worked log', () => {
    const collector = collect(LOG);
    const { columns, reported } = collector.finished();
    expect(reported.vehicleNumber).toBe('1'.repeat(17));
    const read = columns.map(({ of, sender, values }) => [of.key, sender, [...values]]);
    expect(read).toEqual([
      ['o2B1S1', '7E8', [0.72]],
      ['o2TrimB1S1', '7E8', [3.90625]],
      ['o2B1S2', '7E8', [0.65]],
      ['coolant', '18DAF110', [83]],
    ]);
    expect(columns[0]?.timesS[0]).toBe(1700000001.012);
    expect(collector.passedOver).toEqual({ otherTraffic: 2, requests: 4, refusals: 1, dropped: 0, unknownItems: 0 });
  });

  it('names sensors by four banks once the vehicle declares item 1D', () => {
    const { columns } = collect('(1.0) can0 7E8#0441169085\n(2.0) can0 7E8#03411D33').finished();
    expect(columns[0]?.of).toMatchObject({ key: 'o2B2S1', role: 'upstreamO2', bank: 2 });
  });

  it('keeps codes by their status', () => {
    const { reported } = collect('(1.0) can0 7E8#0443010420\n(1.1) can0 7E8#0447010171').finished();
    expect(reported.codes).toEqual([
      { code: 'P0420', status: 'confirmed' },
      { code: 'P0171', status: 'pending' },
    ]);
  });

  it('drops a message whose middle is missing and counts it', () => {
    const collector = collect('(1.0) can0 7E8#1014490201313131\n(1.1) can0 7E8#2231313131313131');
    expect(collector.finished().reported.vehicleNumber).toBeNull();
    expect(collector.passedOver.dropped).toBe(1);
  });
});
