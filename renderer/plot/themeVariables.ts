import type { CSSProperties } from 'react';
import { PANE_COLOURS, type PaneColour, type Theme } from '../style/traceColours.ts';

const USED: readonly PaneColour[] = [
  'tint',
  'tintSelected',
  'tintMarking',
  'axisInk',
  'edge',
  'edgeSelected',
  'cursor',
  'guide',
];

/** The colours of the panes as CSS variables for what lies over the canvases: --pane-tint, --pane-edge ... */
export function themeVariables(theme: Theme): CSSProperties {
  return Object.fromEntries(USED.map((name) => [`--pane-${kebab(name)}`, PANE_COLOURS[name][theme]]));
}

function kebab(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
