// Colours, weights and dashes of the traces on paper: those of the program's light panes, so that a channel keeps its
// colour from the screen to the sheet. Hues from Okabe and Ito 2008 and Paul Tol's schemes; each is 3 : 1 or more on white.

import type { Bank, Role } from '../../capture/roles.ts';

export const TRACE_INKS: Readonly<Record<Role, string>> = {
  upstreamO2: '#0072b2',
  upstreamLambda: '#0072b2',
  downstreamO2: '#d55e00',
  rpm: '#117733',
  coolant: '#882255',
  stft: '#332288',
  ltft: '#aa3377',
  maf: '#228833',
  load: '#aa4499',
  speed: '#332288',
  throttle: '#882255',
  fuelStatus: '#514e46',
  catalystTemp: '#aa4499',
  intakeAir: '#4477aa',
  other: '#514e46',
};

export const PAPER_INKS = {
  paper: '#ffffff',
  ink: '#1c1b17',
  soft: '#514e46',
  grid: '#dfddcf',
  guide: '#858175',
  tint: '#f4eedd',
  edge: '#7a766b',
} as const;

/** Weight of a trace in px: the rear sensor is the heavier one, so that the two differ in grey print too. */
export function inkWidth(role: Role): number {
  return role === 'downstreamO2' ? 2.25 : 1.5;
}

/** How a trace is broken: bank 2 and a sensor behind a second brick each differ from the rest. */
export function inkDash(bank: Bank, sensor: number | null): string | null {
  if (sensor !== null && sensor >= 3) return '10 3 2 3';
  return bank === 2 ? '9 4' : null;
}
