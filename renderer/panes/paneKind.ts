import type { Role } from '../../core/capture/roles.ts';

/** A line or a band that the trade reads a trace against. Values are in the role's own unit. */
export type Guide =
  | { readonly kind: 'line'; readonly at: number; readonly words: string }
  | { readonly kind: 'band'; readonly low: number; readonly high: number; readonly words: string };

/** What the panes of one quantity have in common: one file in renderer/panes/kinds, one line in its index. */
export interface PaneKind {
  readonly id: string;
  /** Name of the axis, without its unit: "Oxygen sensors". */
  readonly words: string;
  /** Channels of these roles are drawn in such a pane; each role belongs to one kind. */
  readonly roles: readonly Role[];
  /** What a channel is called inside the pane, where the name of the axis does not say it already. */
  readonly channelWords: Readonly<Partial<Record<Role, string>>>;
  readonly guides: readonly Guide[];
  /**
   * The scale that is fixed for the quantity, from the lowest and highest value of the pane's channels in the whole
   * capture: the same at every zoom. `low` may equal `high`.
   */
  quantityRange(low: number, high: number): readonly [number, number];
}
