import type { Celsius, Seconds } from '../../units/quantities.ts';
import { type DriveScript, type DriveStep, layDrive } from '../driveScript.ts';
import type { Random } from '../random.ts';

/** What the person with the instrument does. */
export const DRIVE_KINDS = ['bayTest', 'bareHold', 'road', 'coldHold', 'idleOnly'] as const;
export type DriveKind = (typeof DRIVE_KINDS)[number];

export interface DrawnDrive {
  readonly kind: DriveKind;
  readonly script: DriveScript;
  readonly startCoolantC: Celsius;
  /** True where converter and engine were warmed and a steady raised speed was held for long enough. */
  readonly properHold: boolean;
  /** When the judged hold or cruise runs; null for an idle capture. */
  readonly judged: { readonly startS: Seconds; readonly endS: Seconds } | null;
}

/** A drive of a kind, with a person's own lengths and speeds. */
export function drawDrive(kind: DriveKind, random: Random): DrawnDrive {
  const { steps, judgedStep } = stepsOf(kind, random);
  const script = layDrive(steps);
  return {
    kind,
    script,
    startCoolantC: kind === 'coldHold' ? random.between(66, 84) : random.between(80, 90),
    properHold: kind === 'bayTest' || kind === 'road' || kind === 'bareHold',
    judged: judgedStep === null ? null : settledPart(script.startsS[judgedStep] ?? 0, steps[judgedStep]),
  };
}

/** Seconds at the start of a hold or cruise in which speed and load still settle. */
const SETTLING_S: Seconds = 6;

function settledPart(startS: Seconds, step: DriveStep | undefined): DrawnDrive['judged'] {
  const seconds = step && 'seconds' in step ? step.seconds : 0;
  return { startS: startS + SETTLING_S, endS: startS + seconds };
}

function stepsOf(kind: DriveKind, random: Random): { steps: DriveStep[]; judgedStep: number | null } {
  const rpm = Math.round(random.between(1950, 2550) / 50) * 50;
  const heat: DriveStep = { does: 'hold', seconds: random.between(115, 150), rpm: 2500 };
  switch (kind) {
    case 'bayTest':
      return {
        steps: [idle(random, 5, 12), heat, idle(random, 6, 14), hold(random, rpm, 55, 100), ...provocations(random)],
        judgedStep: 3,
      };
    case 'bareHold':
      return { steps: [idle(random, 4, 8), heat, hold(random, rpm, 50, 90), idle(random, 4, 10)], judgedStep: 2 };
    case 'road':
      return roadSteps(random);
    case 'coldHold':
      return { steps: [idle(random, 5, 25), hold(random, rpm, 40, 60), idle(random, 8, 15)], judgedStep: 1 };
    case 'idleOnly':
      return { steps: [idle(random, 80, 150)], judgedStep: null };
  }
}

function idle(random: Random, least: Seconds, most: Seconds): DriveStep {
  return { does: 'idle', seconds: random.between(least, most) };
}

function hold(random: Random, rpm: number, least: Seconds, most: Seconds): DriveStep {
  return { does: 'hold', seconds: random.between(least, most), rpm };
}

/** Snaps and coast-downs after the hold, as far as the person cared. */
function provocations(random: Random): DriveStep[] {
  const steps: DriveStep[] = [idle(random, 6, 12)];
  if (random.chance(0.7)) steps.push({ does: 'snap', peakRpm: random.between(3600, 4400) }, idle(random, 10, 16));
  if (random.chance(0.75))
    steps.push(
      { does: 'coast', fromRpm: random.between(3000, 3700), heldS: random.between(3, 6) },
      idle(random, 15, 25),
    );
  return steps;
}

function roadSteps(random: Random): { steps: DriveStep[]; judgedStep: number } {
  const speed = random.between(55, 95);
  const rpm = random.between(1700, 2600);
  const load = random.between(24, 42);
  const rampS = random.between(6, 12);
  return {
    steps: [
      idle(random, 4, 8),
      { does: 'drive', seconds: random.between(60, 90), rpm: rpm * 0.95, load, speed: speed * 0.8, rampS },
      { does: 'overrun', seconds: random.between(5, 9), rpm: 1350, speed: speed * 0.5 },
      { does: 'drive', seconds: random.between(75, 120), rpm, load, speed, rampS },
      { does: 'overrun', seconds: random.between(5, 9), rpm: 1250, speed: speed * 0.5 },
      { does: 'drive', seconds: random.between(15, 30), rpm: rpm * 0.9, load: load * 0.9, speed: speed * 0.7, rampS },
    ],
    judgedStep: 3,
  };
}
