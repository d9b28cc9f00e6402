import { describe, expect, test } from 'vitest';
import type { TraceView } from '../../../../../core/capture/traceView.ts';
import { TRACE_INKS } from '../../../../../core/evidence/picture/inks.ts';
import type { TracePictureInput } from '../../../../../core/evidence/picture/picture.ts';
import { niceStep, ticks } from '../../../../../core/evidence/picture/ticks.ts';
import { tracePath } from '../../../../../core/evidence/picture/tracePath.ts';
import { tracePicture } from '../../../../../core/evidence/tracePicture.ts';
import { TRACE_COLOURS } from '../../../../../renderer/style/traceColours.ts';
import { HOSTILE_TEXTS } from '../../../../support/hostileTexts.ts';

const map = { xOf: (timeS: number) => timeS * 10, yOf: (value: number) => 100 - value * 100 };

function view(samples: readonly (readonly [number, number, number?])[], more: Partial<TraceView> = {}): TraceView {
  return {
    channelId: 'c0',
    kind: 'samples',
    startS: 0,
    endS: 10,
    timesS: Float64Array.from(samples, ([timeS]) => timeS),
    low: Float32Array.from(samples, ([, low]) => low),
    high: Float32Array.from(samples, ([, low, high]) => high ?? low),
    steps: false,
    gapS: 1.5,
    ...more,
  };
}

function picture(text: string): TracePictureInput {
  return {
    title: text,
    foot: text,
    startS: 0,
    endS: 10,
    width: 1200,
    height: 700,
    decimalSign: '.',
    windows: [{ startS: 2, endS: 8, words: text }],
    notes: [{ startS: 5, words: text }],
    panes: [
      {
        words: text,
        unit: 'V',
        scale: [0, 1],
        guides: [{ low: 0.45, high: 0.45, words: text }],
        traces: [
          {
            words: text,
            role: 'upstreamO2',
            bank: 1,
            sensor: 1,
            view: view([
              [0, 0.1],
              [1, 0.9],
            ]),
          },
          {
            words: text,
            role: 'downstreamO2',
            bank: 2,
            sensor: 2,
            view: view([
              [0, 0.5],
              [1, 0.5],
            ]),
          },
        ],
      },
    ],
  };
}

const ELEMENTS = new Set(['?xml', 'svg', 'title', 'desc', 'g', 'rect', 'path', 'text', 'clipPath']);

describe('T-INJ-4: the picture of the traces', () => {
  test.each(HOSTILE_TEXTS.map((text) => [text]))('%j makes no element and no attribute', (text) => {
    const tags = (of: string) =>
      (tracePicture(picture(of)).match(/<[^>]*>/g) ?? []).map((tag) => tag.replace(/"[^"]*"/g, '""'));
    const bones = tags(text);
    expect(bones).toEqual(tags('harmless'.padEnd(text.length)));
    for (const tag of bones) expect(ELEMENTS).toContain(/^<\/?([?a-zA-Z]+)/.exec(tag)?.[1]);
  });

  test('holds no script, no event, no address from outside, and texts as texts', () => {
    const svg = tracePicture(picture('Van 14'));
    expect(svg).not.toMatch(/<script|foreignObject|\son[a-z]+=|href|url\((?!#)|@import/i);
    expect(svg.match(/https?:[^"]*/g)).toEqual(['http://www.w3.org/2000/svg']);
    expect(svg).toContain('>Van 14, V</text>');
    expect(svg).toContain('<title>Van 14</title>');
    expect(svg).toContain('Time from the start of the capture, s');
  });

  test('the same input gives the same bytes; nothing to draw is a mistake of the caller', () => {
    expect(tracePicture(picture('a'))).toBe(tracePicture(picture('a')));
    expect(() => tracePicture({ ...picture('a'), endS: 0 })).toThrow(RangeError);
    expect(() => tracePicture({ ...picture('a'), panes: [] })).toThrow(RangeError);
    expect(() => tracePicture({ ...picture('a'), width: 100 })).toThrow(RangeError);
  });

  test('windows and notes out of sight are not drawn, and one that runs over the edge is cut there', () => {
    const svg = tracePicture({
      ...picture('a'),
      windows: [
        { startS: 20, endS: 30, words: 'far away' },
        { startS: -5, endS: 5, words: 'half' },
      ],
      notes: [{ startS: 11, words: 'later' }],
    });
    expect(svg).not.toMatch(/>far away<|>later</);
    expect(svg).toContain('>half</text>');
    expect(svg).toMatch(/<rect x="72" y="66" width="555"/);
  });

  test('front and rear differ in hue, weight and, for bank 2, dash; colours are those of the screen', () => {
    const svg = tracePicture(picture('a'));
    expect(svg).toContain('stroke="#0072b2" stroke-width="1.5" stroke-linejoin');
    expect(svg).toContain('stroke="#d55e00" stroke-width="2.25" stroke-dasharray="9 4"');
    for (const [role, { light }] of Object.entries(TRACE_COLOURS)) expect(Reflect.get(TRACE_INKS, role)).toBe(light);
  });
});

describe('the path of a trace', () => {
  test.each<[string, TraceView, string]>([
    ['nothing', view([]), ''],
    [
      'a line',
      view([
        [0, 0],
        [1, 0.5],
      ]),
      'M0 100h0.1L10 50',
    ],
    [
      'steps',
      view(
        [
          [0, 0],
          [1, 0.5],
        ],
        { steps: true },
      ),
      'M0 100h0.1H10V50',
    ],
    [
      'a gap',
      view([
        [0, 0],
        [4, 1],
      ]),
      'M0 100h0.1M40 0h0.1',
    ],
    [
      'an envelope, down and up in turn',
      view(
        [
          [0, 0, 1],
          [1, 0.2, 0.8],
        ],
        { kind: 'envelope' },
      ),
      'M0 100V0L10 20V80',
    ],
    [
      'a value that is none',
      view([
        [0, 0],
        [0.5, Number.NaN],
        [1, 1],
      ]),
      'M0 100h0.1L10 0',
    ],
  ])('%s', (_, trace, path) => {
    expect(tracePath(trace, map)).toBe(path);
  });
});

describe('D10: ticks', () => {
  test.each([
    [0, 1, 7, [0, 0.2, 0.4, 0.6, 0.8, 1]],
    [0, 3000, 7, [0, 500, 1000, 1500, 2000, 2500, 3000]],
    [-0.3, 0.3, 4, [-0.2, 0, 0.2]],
    [40, 130, 12, [40, 50, 60, 70, 80, 90, 100, 110, 120, 130]],
    [5, 5, 5, [5]],
    [2, 1, 5, []],
  ])('%d to %d with at most %d', (low, high, most, values) => {
    expect(ticks(low, high, most).map(({ value }) => value)).toEqual(values);
  });

  test('steps are 1, 2, 5 by powers of ten', () => {
    expect([0.9, 1, 1.1, 2.5, 5.1, 0.03, 0].map(niceStep)).toEqual([1, 1, 2, 5, 10, 0.05, 1]);
  });
});
