// Which panes a capture is first shown in: the sensors of each bank, engine speed, coolant. Everything else is a
// command away.

import type { CaptureOutline, ChannelSummary } from '../../core/bridge/coreMessages.ts';
import type { Role } from '../../core/capture/roles.ts';
import type { CaptureView } from '../state/viewState.ts';

type Pane = CaptureView['panes'][number];

const SENSOR_WEIGHT = 3;
const OTHER_WEIGHT = 1.6;

const FRONT: readonly Role[] = ['upstreamO2', 'upstreamLambda'];

/** The whole capture in its first panes, without a cursor. */
export function firstView(capture: CaptureOutline, overlay: boolean): CaptureView {
  return {
    visible: { startS: 0, endS: capture.durationS },
    panes: firstPanes(capture, overlay),
    cursorS: null,
    secondCursorS: null,
    back: [],
    forward: [],
  };
}

/** Panes of the sensors, bank by bank, then engine speed and coolant, where the capture has them. */
export function firstPanes(capture: CaptureOutline, overlay: boolean): Pane[] {
  const shown = [
    ...sensorPanes(capture, overlay),
    ...(['rpm', 'coolant'] as const).flatMap((role) => capture.channels.filter(has(role)).slice(0, 1).map(paneOf)),
  ];
  // A capture without any known role still shows its first channels.
  return sumToOne(shown.length > 0 ? shown : capture.channels.slice(0, 4).map(paneOf));
}

/** Front and rear of each bank over each other, or each in its own pane. A lambda has another scale and stays alone. */
export function sensorPanes(capture: CaptureOutline, overlay: boolean): Pane[] {
  return ([1, 2, null] as const).flatMap((bank) => {
    const ofBank = capture.channels.filter((channel) => channel.bank === bank);
    const front = ofBank.filter((channel) => FRONT.includes(channel.role));
    const rear = ofBank.filter(has('downstreamO2'));
    const together = [...front.filter(has('upstreamO2')), ...rear];
    if (!overlay) return [...front, ...rear].map(paneOf);
    const alone = front.filter(has('upstreamLambda')).map(paneOf);
    return together.length === 0 ? alone : [...alone, pane(together)];
  });
}

/** The panes with the sensors put over each other or apart, in the height they had; other panes stay as they are. */
export function withOverlay(panes: readonly Pane[], capture: CaptureOutline, overlay: boolean): Pane[] {
  const sensors = new Set(sensorPanes(capture, false).flatMap((one) => one.channelIds));
  const isSensor = (one: Pane) => one.channelIds.some((id) => sensors.has(id));
  const height = panes.filter(isSensor).reduce((sum, one) => sum + one.share, 0);
  const anew = sensorPanes(capture, overlay).map((one, _index, all) => ({ ...one, share: height / all.length }));
  return [...anew, ...panes.filter((one) => !isSensor(one))];
}

/** The panes with one channel's own pane more, for which the others make room; or without that channel. */
export function withChannel(panes: readonly Pane[], channel: ChannelSummary, shown: boolean): Pane[] {
  if (shown) return sumToOne([...panes, { ...paneOf(channel), share: 1 / Math.max(1, panes.length) }]);
  const left = panes.map((one) => ({ ...one, channelIds: one.channelIds.filter((id) => id !== channel.id) }));
  return sumToOne(left.filter((one) => one.channelIds.length > 0));
}

const has = (role: Role) => (channel: ChannelSummary) => channel.role === role;

const paneOf = (channel: ChannelSummary): Pane => pane([channel]);

function pane(channels: readonly ChannelSummary[]): Pane {
  const channelIds = channels.map((channel) => channel.id);
  const sensor = channels.some(({ role }) => role === 'downstreamO2' || FRONT.includes(role));
  return {
    id: `p-${channelIds.join('-')}`,
    channelIds,
    share: sensor ? SENSOR_WEIGHT : OTHER_WEIGHT,
    scale: { kind: 'quantity' },
  };
}

function sumToOne(panes: readonly Pane[]): Pane[] {
  const sum = panes.reduce((total, one) => total + one.share, 0);
  return panes.map((one) => ({ ...one, share: one.share / sum }));
}
