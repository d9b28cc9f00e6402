import { describe, expect, it } from 'vitest';
import type { CaptureSummary } from '../../../../core/bridge/coreMessages.ts';
import type { Role } from '../../../../core/capture/roles.ts';
import { compareLimits, compareModel, compareShifts } from '../../../../renderer/plot/compareModel.ts';
import { type PaneSetting, paneModel } from '../../../../renderer/plot/paneModel.ts';
import type { PaneLayout } from '../../../../renderer/plot/traceStackProps.ts';
import { TRACE_COLOURS } from '../../../../renderer/style/traceColours.ts';
import { inventedDrive } from '../../../support/inventedDrive.ts';
import { syntheticCapture, syntheticSource } from '../../../support/syntheticSource.ts';

const drive = inventedDrive({ rateHz: 10, durationS: 200, banks: 2, seed: 5 });
const capture = syntheticCapture('two banks', drive);
const source = syntheticSource(drive);
const setting: PaneSetting = { capture, source, theme: 'light', units: undefined, guides: true, ghosts: [] };

const pane = (...channelIds: readonly string[]): PaneLayout => ({
  id: 'p',
  channelIds,
  share: 1,
  scale: { kind: 'quantity' },
});

describe('the name of a pane', () => {
  it.each([
    [['up1', 'down1'], 'Oxygen sensors, bank 1', 'V'],
    [['up1', 'down1', 'up2', 'down2'], 'Oxygen sensors', 'V'],
    [['up2'], 'Upstream oxygen sensor, bank 2', 'V'],
    [['rpm'], 'Engine speed', '1/min'],
    [['stft', 'ltft'], 'Fuel trims, bank 1', '%'],
  ])('of %j is "%s", in %s', (ids, title, unit) => {
    const model = paneModel(pane(...ids), setting);
    expect([model.title, model.unit]).toEqual([title, unit]);
  });

  it('does not speak of a bank where the capture has one only', () => {
    const one = inventedDrive({ rateHz: 10, durationS: 20, banks: 1, seed: 5 });
    const single = { ...setting, capture: syntheticCapture('one bank', one) };
    expect(paneModel(pane('up1', 'down1'), single).title).toBe('Oxygen sensors');
  });
});

describe('the traces of a pane', () => {
  it('are told apart by word, colour, weight and dash', () => {
    const { legend } = paneModel(pane('up1', 'down1', 'up2', 'down2'), setting);
    expect(legend.map(({ words }) => words)).toEqual([
      'Upstream, bank 1',
      'Downstream, bank 1',
      'Upstream, bank 2',
      'Downstream, bank 2',
    ]);
    const looks = legend.map(({ colour, width, dash }) => `${colour} ${width} ${dash.join()}`);
    expect(new Set(looks).size).toBe(4);
  });

  it('need no word of their own where the pane says it already', () => {
    expect(paneModel(pane('rpm'), setting).legend[0]?.words).toBe('');
    expect(paneModel(pane('up2'), setting).legend[0]?.words).toBe('');
    expect(paneModel(pane('up2'), setting).legend[0]?.fullWords).toBe('Upstream oxygen sensor, bank 2');
  });

  it('keep their colour in every pane and theme of their own', () => {
    for (const theme of ['light', 'dark'] as const) {
      const colours = [pane('up1'), pane('up1', 'down1')].map(
        (one) => paneModel(one, { ...setting, theme }).legend[0]?.colour,
      );
      expect(new Set([...colours, TRACE_COLOURS.upstreamO2[theme]]).size).toBe(1);
    }
  });

  it('are followed by ghosts of their channels alone', () => {
    const view = { channelId: 'g', kind: 'samples', startS: 0, endS: 1, steps: false, gapS: 1 } as const;
    const empty = { timesS: new Float64Array(), low: new Float32Array(), high: new Float32Array() };
    const ghosts = [
      { id: 'good', words: 'A good converter', overChannelId: 'down1', view: { ...view, ...empty } },
      { id: 'other', words: 'Elsewhere', overChannelId: 'rpm', view: { ...view, ...empty } },
    ];
    const { legend, wish } = paneModel(pane('up1', 'down1'), { ...setting, ghosts });
    expect(legend.at(-1)?.words).toBe('A good converter');
    expect(wish.ghosts).toHaveLength(1);
    expect(wish.ghosts[0]?.dash.length).toBeGreaterThan(0);
  });

  it('of a channel that the capture does not have are left out', () => {
    const { legend, wish } = paneModel(pane('up1', 'gone'), setting);
    expect(legend).toHaveLength(1);
    expect(wish.feeds[0]?.channelIds).toEqual(['up1']);
    expect(paneModel(pane('gone'), setting).wish.quantityRange).toEqual([0, 1]);
  });
});

describe('guides', () => {
  it('name themselves with their value and unit, and can be turned off', () => {
    const words = (ids: readonly string[], guides = true) =>
      paneModel(pane(...ids), { ...setting, guides }).wish.guides.map((guide) => guide.words);
    expect(words(['up1'])).toEqual(['0.45\u00a0V switch point']);
    expect(words(['rpm'])).toEqual(['2000 to 2500\u00a01/min hold band']);
    expect(words(['coolant'])).toEqual(['80\u00a0°C warm engine']);
    expect(words(['rpm'], false)).toEqual([]);
  });

  it('are said in the unit that a person reads by, and stay where they are', () => {
    const { wish, unit } = paneModel(pane('coolant'), { ...setting, units: { temperature: 'F', speed: 'mph' } });
    expect(unit).toBe('°F');
    expect(wish.guides[0]).toEqual({ low: 80, high: 80, words: '176\u00a0°F warm engine' });
  });
});

describe('a comparison', () => {
  const side = (label: string, startS: number, endS: number) => ({ capture, source, window: { startS, endS }, label });
  const first = side('Before', 20, 50);
  const second = side('After', 100, 120);
  const compared = { id: 'c', share: 1, scale: { kind: 'quantity' } } as const;
  const how = { first, second, guides: false, theme: 'light' } as const;

  it('tells the sides apart by label, weight and dash, not by hue', () => {
    const { legend } = compareModel({ ...compared, firstChannelIds: ['down1'], secondChannelIds: ['down1'] }, how);
    const [before, after] = legend;
    expect([before?.words, after?.words]).toEqual(['Before', 'After']);
    expect(after?.colour).toBe(before?.colour);
    expect(after?.dash).not.toEqual(before?.dash);
    expect(after?.width).not.toBe(before?.width);
    expect(before?.readingKey).not.toBe(after?.readingKey);
  });

  it('puts both starts at second 0, and the second side later by the offset', () => {
    expect(compareShifts(first, second, 0)).toEqual([-20, -100]);
    expect(compareShifts(first, second, 2.5)).toEqual([-20, -97.5]);
    expect(compareLimits(how, [], 0)).toMatchObject({ startS: 0, endS: 30 });
    expect(compareLimits(how, [], -4)).toMatchObject({ startS: -4, endS: 30 });
    expect(compareLimits(how, [], 25)).toMatchObject({ startS: 0, endS: 45 });
  });

  it('shows nothing of a capture beyond its window', () => {
    const { wish } = compareModel({ ...compared, firstChannelIds: ['up1'], secondChannelIds: ['up2'] }, how);
    expect(wish.feeds.map(({ whole }) => whole)).toEqual([first.window, second.window]);
  });

  it('has one scale that holds both', () => {
    const warm = withFacts(capture, 'coolant', { min: 85, max: 118 });
    const cold = withFacts(capture, 'coolant', { min: 12, max: 60 });
    const both = { ...how, first: { ...first, capture: warm }, second: { ...second, capture: cold } };
    const { wish } = compareModel({ ...compared, firstChannelIds: ['coolant'], secondChannelIds: ['coolant'] }, both);
    expect(wish.quantityRange[0]).toBeLessThanOrEqual(12);
    expect(wish.quantityRange[1]).toBeGreaterThanOrEqual(118);
  });
});

function withFacts(from: CaptureSummary, role: Role, facts: { min: number; max: number }): CaptureSummary {
  const channels = from.channels.map((channel) =>
    channel.role === role ? { ...channel, facts: { ...channel.facts, ...facts } } : channel,
  );
  return { ...from, channels };
}
