import type { KilometresPerHour, Percent, RevolutionsPerMinute, Seconds } from '../units/quantities.ts';

/** One thing the driver does. Loads are calculated load; null takes what the engine needs without load. */
export type DriveStep =
  | { readonly does: 'idle'; readonly seconds: Seconds; readonly rpm?: RevolutionsPerMinute }
  | { readonly does: 'hold'; readonly seconds: Seconds; readonly rpm: RevolutionsPerMinute }
  | { readonly does: 'snap'; readonly peakRpm: RevolutionsPerMinute }
  | { readonly does: 'coast'; readonly fromRpm: RevolutionsPerMinute; readonly heldS: Seconds }
  | {
      readonly does: 'drive';
      readonly seconds: Seconds;
      readonly rpm: RevolutionsPerMinute;
      readonly load: Percent;
      readonly speed: KilometresPerHour;
      /** Seconds to get there. */
      readonly rampS: Seconds;
    }
  | {
      readonly does: 'overrun';
      readonly seconds: Seconds;
      readonly rpm: RevolutionsPerMinute;
      readonly speed: KilometresPerHour;
    };

/** Where the drive is at a moment. Load null: the engine's own. */
export interface DrivePoint {
  readonly timeS: Seconds;
  readonly rpm: RevolutionsPerMinute;
  readonly load: Percent | null;
  readonly throttle: 'closed' | 'open';
  readonly speed: KilometresPerHour;
}

/** A drive as points between which speed and load run straight; throttle holds until the next point. */
export interface DriveScript {
  readonly points: readonly DrivePoint[];
  readonly durationS: Seconds;
  /** When each step of the script starts, for the truth of a case. */
  readonly startsS: readonly Seconds[];
}

const IDLE_RPM = 760;

/** Lays the steps behind each other. An empty list gives a drive of length 0. */
export function layDrive(steps: readonly DriveStep[]): DriveScript {
  const points: DrivePoint[] = [{ timeS: 0, rpm: IDLE_RPM, load: null, throttle: 'closed', speed: 0 }];
  const startsS: number[] = [];
  for (const step of steps) {
    startsS.push(endOf(points).timeS);
    addStep(points, step);
  }
  return { points, durationS: endOf(points).timeS, startsS };
}

function endOf(points: readonly DrivePoint[]): DrivePoint {
  const last = points[points.length - 1];
  if (!last) throw new Error('A drive has at least its first point.');
  return last;
}

function addStep(points: DrivePoint[], step: DriveStep): void {
  const from = endOf(points);
  const add = (after: Seconds, change: Partial<DrivePoint>) => {
    const last = endOf(points);
    points.push({ ...last, ...change, timeS: last.timeS + after });
  };
  switch (step.does) {
    case 'idle': {
      const rpm = step.rpm ?? IDLE_RPM;
      const fallS = Math.min(step.seconds, Math.max(0.8, Math.abs(from.rpm - rpm) / 900));
      add(0.05, { load: null, throttle: 'closed' });
      add(fallS, { rpm, speed: 0 });
      add(Math.max(0, step.seconds - fallS - 0.05), {});
      return;
    }
    case 'hold':
      add(0.05, { load: null, throttle: 'open' });
      add(2, { rpm: step.rpm });
      add(Math.max(0, step.seconds - 2.05), {});
      return;
    case 'snap':
      add(0.05, { load: 82, throttle: 'open' });
      add(0.65, { rpm: step.peakRpm });
      add(0.1, { load: null, throttle: 'closed' });
      add((step.peakRpm - IDLE_RPM) / 1150, { rpm: IDLE_RPM });
      return;
    case 'coast':
      add(0.05, { load: null, throttle: 'open' });
      add(1.8, { rpm: step.fromRpm });
      add(step.heldS, {});
      add(0.1, { throttle: 'closed' });
      add((step.fromRpm - IDLE_RPM) / 620, { rpm: IDLE_RPM });
      return;
    case 'drive':
      add(0.05, { load: Math.min(66, step.load + (step.speed > from.speed + 5 ? 28 : 0)), throttle: 'open' });
      add(step.rampS, { rpm: step.rpm, speed: step.speed });
      add(0.6, { load: step.load });
      add(Math.max(0, step.seconds - step.rampS - 0.65), {});
      return;
    case 'overrun':
      add(0.1, { load: null, throttle: 'closed', rpm: from.rpm });
      add(Math.max(0.1, step.seconds - 0.1), { rpm: step.rpm, speed: step.speed });
      return;
  }
}
