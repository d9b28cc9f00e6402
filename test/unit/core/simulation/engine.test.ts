import { describe, expect, it } from 'vitest';
import { SOUND_VEHICLE } from '../../../../core/simulation/defaults.ts';
import { layDrive } from '../../../../core/simulation/driveScript.ts';
import { airFlow } from '../../../../core/simulation/engine.ts';
import { createRandom } from '../../../../core/simulation/random.ts';
import { FUEL_STATUS, type SimulatedDrive, simulateDrive } from '../../../../core/simulation/simulate.ts';
import type { BankParameters, VehicleParameters } from '../../../../core/simulation/vehicle.ts';

const STEP_S = 0.01;

function vehicle(change: Partial<BankParameters> = {}): VehicleParameters {
  return { ...SOUND_VEHICLE, banks: SOUND_VEHICLE.banks.map((bank) => ({ ...bank, ...change })) };
}

function drive(
  steps: Parameters<typeof layDrive>[0],
  change: Partial<BankParameters> = {},
  coolantC = 88,
): SimulatedDrive {
  return simulateDrive(vehicle(change), layDrive(steps), coolantC, createRandom(3), STEP_S);
}

/** Rising crossings of a voltage, a second, from one moment on. */
function switchHz(volts: Float32Array, fromS: number, toS: number): number {
  let count = 0;
  for (let k = fromS / STEP_S + 1; k < toS / STEP_S; k++)
    if ((volts[k - 1] ?? 0) < 0.45 && (volts[k] ?? 0) >= 0.45) count++;
  return count / (toS - fromS);
}

const bankOf = ({ banks }: SimulatedDrive) => {
  const [bank] = banks;
  if (!bank) throw new Error('The vehicle has no bank.');
  return bank;
};

describe('the simulated engine', () => {
  it('takes in its displacement every second turn: 2 L, 2250 1/min, 25 % load', () => {
    expect(airFlow(2, 2250, 25)).toBeCloseTo(2 * 18.75 * 1.184 * 0.25, 9);
  });

  it('swings at 0.5 to 3 Hz when held at 2250 1/min, slower at idle (check 3.35)', () => {
    const held = bankOf(drive([{ does: 'hold', seconds: 60, rpm: 2250 }]));
    const idling = bankOf(drive([{ does: 'idle', seconds: 60 }]));
    expect(switchHz(held.frontV, 20, 60)).toBeGreaterThan(0.5);
    expect(switchHz(held.frontV, 20, 60)).toBeLessThan(3);
    expect(switchHz(idling.frontV, 20, 60)).toBeLessThan(switchHz(held.frontV, 20, 60));
  });

  it('swings by 1 to 5 % of lambda (check 3.35)', () => {
    const { x } = bankOf(drive([{ does: 'hold', seconds: 60, rpm: 2250 }]));
    const settled = [...x.slice(20 / STEP_S)].sort((a, b) => a - b);
    const half =
      ((settled[Math.floor(0.95 * settled.length)] ?? 0) - (settled[Math.floor(0.05 * settled.length)] ?? 0)) / 2;
    expect(half).toBeGreaterThan(0.01);
    expect(half).toBeLessThan(0.05);
  });

  it('cuts the fuel when the throttle closes at speed, says so, and gives it back', () => {
    const simulated = drive([
      { does: 'hold', seconds: 20, rpm: 2250 },
      { does: 'coast', fromRpm: 3400, heldS: 3 },
      { does: 'idle', seconds: 20 },
    ]);
    const { x, fuelStatus, rearV } = bankOf(simulated);
    const cut = x.indexOf(1);
    expect(cut * STEP_S).toBeGreaterThan(24);
    expect([...fuelStatus.slice(cut - 20, cut)]).toContain(FUEL_STATUS.openDriving);
    expect(Math.min(...rearV.slice(cut))).toBeLessThan(0.1);
    expect(x[x.length - 1]).toBeLessThan(0.2);
    expect(fuelStatus[fuelStatus.length - 1]).toBe(FUEL_STATUS.closed);
  });

  it('runs in open loop while cold', () => {
    const { fuelStatus } = bankOf(drive([{ does: 'idle', seconds: 5 }], {}, 5));
    expect(new Set(fuelStatus)).toEqual(new Set([FUEL_STATUS.openCold]));
  });

  it('learns a fuel error: the long-term trim takes over what the short-term one carried', () => {
    const [sound] = SOUND_VEHICLE.banks;
    if (!sound) throw new Error('The vehicle has no bank.');
    const mixture = { ...sound.mixture, error: -6, learned: 0, drift: 0 };
    const { longTrim } = bankOf(drive([{ does: 'hold', seconds: 300, rpm: 2250 }], { mixture }));
    expect(longTrim[0]).toBeCloseTo(0, 1);
    expect(longTrim[longTrim.length - 1]).toBeGreaterThan(4);
  });

  it('is the same drive for the same seed', () => {
    const once = drive([{ does: 'hold', seconds: 5, rpm: 2250 }]);
    const again = drive([{ does: 'hold', seconds: 5, rpm: 2250 }]);
    expect(bankOf(once).frontV).toEqual(bankOf(again).frontV);
  });
});
