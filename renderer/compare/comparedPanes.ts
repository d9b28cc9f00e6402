import type { Role } from '../../core/capture/roles.ts';
import type { ComparedPane } from '../plot/compareStackProps.ts';
import type { BankSide } from './useComparedSides.ts';

/** Quantities that are laid over each other, each in a pane of its own. */
const COMPARED: readonly { id: string; roles: readonly Role[]; weight: number }[] = [
  { id: 'front', roles: ['upstreamO2', 'upstreamLambda'], weight: 3 },
  { id: 'rear', roles: ['downstreamO2'], weight: 3 },
  { id: 'speed', roles: ['rpm'], weight: 2 },
  { id: 'coolant', roles: ['coolant'], weight: 1 },
];

/** Panes for the quantities that both captures hold; front and rear sensor apart, so that each side keeps its place. */
export function comparedPanes(first: BankSide, second: BankSide): readonly ComparedPane[] {
  const shown = COMPARED.flatMap(({ id, roles, weight }) => {
    const firstChannelIds = idsOf(first, roles);
    const secondChannelIds = idsOf(second, roles);
    const both = firstChannelIds.length > 0 && secondChannelIds.length > 0;
    return both ? [{ id, firstChannelIds, secondChannelIds, weight }] : [];
  });
  const sum = shown.reduce((total, { weight }) => total + weight, 0);
  return shown.map(({ weight, ...pane }) => ({ ...pane, share: weight / sum, scale: { kind: 'quantity' } }));
}

/** The window's own bank, else the first: a comparison lays two traces over each other, not four. */
function idsOf({ capture, bank }: BankSide, roles: readonly Role[]): string[] {
  const playing = capture.channels.filter(({ role }) => roles.includes(role));
  const own = playing.find((channel) => channel.bank === bank) ?? playing[0];
  return own === undefined ? [] : [own.id];
}
