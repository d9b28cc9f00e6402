import type { CaptureSummary, ChannelSummary } from '../../core/bridge/coreMessages.ts';
import type { Role } from '../../core/capture/roles.ts';
import type { ComparedPane } from '../plot/compareStackProps.ts';

/** Quantities that are laid over each other, each in a pane of its own. */
const COMPARED: readonly { id: string; roles: readonly Role[]; weight: number }[] = [
  { id: 'front', roles: ['upstreamO2', 'upstreamLambda'], weight: 3 },
  { id: 'rear', roles: ['downstreamO2'], weight: 3 },
  { id: 'speed', roles: ['rpm'], weight: 2 },
  { id: 'coolant', roles: ['coolant'], weight: 1 },
];

/** Panes for the quantities that both captures hold; front and rear sensor apart, so that each side keeps its place. */
export function comparedPanes(first: CaptureSummary, second: CaptureSummary): readonly ComparedPane[] {
  const shown = COMPARED.flatMap(({ id, roles, weight }) => {
    const firstChannelIds = idsOf(first.channels, roles);
    const secondChannelIds = idsOf(second.channels, roles);
    const both = firstChannelIds.length > 0 && secondChannelIds.length > 0;
    return both ? [{ id, firstChannelIds, secondChannelIds, weight }] : [];
  });
  const sum = shown.reduce((total, { weight }) => total + weight, 0);
  return shown.map(({ weight, ...pane }) => ({ ...pane, share: weight / sum, scale: { kind: 'quantity' } }));
}

/** The first bank that has one: a comparison lays two traces over each other, not four. */
function idsOf(channels: readonly ChannelSummary[], roles: readonly Role[]): string[] {
  return channels
    .filter(({ role }) => roles.includes(role))
    .slice(0, 1)
    .map(({ id }) => id);
}
