import { describe, expect, it } from 'vitest';
import { airPulls } from '../../../../core/model/airPulls.ts';
import { fittedDrive, frontOf } from '../../../support/fittedDrive.ts';

describe('fuel cuts by the front sensor alone', () => {
  it('finds the closed throttle after the hold and the coast-down, and nothing in the swings', () => {
    const pulls = airPulls(frontOf(fittedDrive(0.5, 20).capture));
    expect(pulls).toHaveLength(2);
    expect(pulls[0]?.startS).toBeGreaterThan(68);
    expect(pulls[0]?.endS).toBeLessThan(72);
    expect(pulls[1]?.startS).toBeGreaterThan(88);
  });

  it('takes a wideband lambda far above any mixture for air', () => {
    const front = frontOf(fittedDrive(0.5, 20).capture);
    const lambda = { ...front, role: 'upstreamLambda' as const, values: front.values.map((v) => (v < 0.04 ? 1.9 : 1)) };
    expect(airPulls(lambda).length).toBeGreaterThan(0);
  });

  it('finds none in a channel without values', () => {
    const front = frontOf(fittedDrive(0.5, 20).capture);
    expect(airPulls({ ...front, values: front.values.map(() => Number.NaN) })).toEqual([]);
  });
});
