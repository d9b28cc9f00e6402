import { describe, expect, it } from 'vitest';
import { asCapture } from '../../../../core/simulation/asCapture.ts';
import { SOUND_VEHICLE } from '../../../../core/simulation/defaults.ts';
import { layDrive } from '../../../../core/simulation/driveScript.ts';
import { recordAnalogue } from '../../../../core/simulation/instruments/analogue.ts';
import { logDrive } from '../../../../core/simulation/instruments/logger.ts';
import { pollDrive } from '../../../../core/simulation/instruments/polled.ts';
import { createRandom } from '../../../../core/simulation/random.ts';
import { COOLANT, frontVolts, RPM, rearVolts, SPEED } from '../../../../core/simulation/signals.ts';
import { simulateDrive } from '../../../../core/simulation/simulate.ts';

const DRIVE = simulateDrive(
  SOUND_VEHICLE,
  layDrive([{ does: 'hold', seconds: 40, rpm: 2250 }]),
  88,
  createRandom(1),
  0.005,
);
const SIGNALS = [RPM, frontVolts(1), rearVolts(1), COOLANT];
const POLLED = { answersPerS: 12, jitter: 0.25, latencyS: 0.05, lost: 0, pauses: 0, pauseS: 0 };
const LOGGED = { rateHz: 20, jitterS: 0, sensorHz: 20, otherHz: 20, latencyS: 0, lost: 0 };

describe('a polled data list', () => {
  it('shares its answers among the channels: 12 a second over 4 channels are 3 rows a second, at irregular times', () => {
    const { channels } = asCapture(pollDrive(DRIVE, SIGNALS, POLLED, createRandom(2)), 'polled');
    for (const { facts } of channels) {
      expect(facts.medianRateHz).toBeCloseTo(3, 0);
      expect(facts.jitterS).toBeGreaterThan(0.02);
    }
    expect(channels[0]?.time).toBe(channels[3]?.time);
  });

  it('gives each value its own time where it writes no rows', () => {
    const { channels } = asCapture(pollDrive(DRIVE, SIGNALS, { ...POLLED, ownTimes: true }, createRandom(2)), 'own');
    expect(channels[0]?.time).not.toBe(channels[1]?.time);
  });

  it('loses some answers', () => {
    const { channels } = asCapture(pollDrive(DRIVE, SIGNALS, { ...POLLED, lost: 0.2 }, createRandom(2)), 'lossy');
    for (const { facts, values } of channels) {
      expect(facts.finite).toBeLessThan(values.length);
      expect(facts.finite).toBeGreaterThan(values.length * 0.6);
    }
  });

  it('shows a moment that has passed: a later latency shows an older voltage', () => {
    const read = (latencyS: number) =>
      pollDrive(DRIVE, [frontVolts(1)], { ...POLLED, jitter: 0, latencyS }, createRandom(2)).channels[0]?.values;
    expect(read(0.4)).not.toEqual(read(0));
  });
});

describe('a logger', () => {
  it('holds what is renewed more slowly than it writes, and the facts say so', () => {
    const { channels } = asCapture(logDrive(DRIVE, SIGNALS, { ...LOGGED, sensorHz: 5 }, createRandom(3)), 'held');
    const front = channels.find(({ role }) => role === 'upstreamO2');
    expect(front?.facts.medianRateHz).toBeCloseTo(20, 6);
    expect(front?.facts.renewalRateHz).toBeCloseTo(5, 6);
  });

  it('holds nothing where every row is new', () => {
    const { channels } = asCapture(logDrive(DRIVE, SIGNALS, LOGGED, createRandom(3)), 'fresh');
    expect(channels.find(({ role }) => role === 'upstreamO2')?.facts.renewalRateHz).toBeCloseTo(20, 6);
  });

  it('shows voltages in steps of 5 mV (SAE J1979 PID 14, check 1.13) and a channel that never changes as such', () => {
    const { channels } = asCapture(logDrive(DRIVE, [...SIGNALS, SPEED], LOGGED, createRandom(3)), 'steps');
    expect(channels.find(({ role }) => role === 'upstreamO2')?.facts.resolution).toBeCloseTo(0.005, 9);
    const speed = channels.find(({ role }) => role === 'speed')?.facts;
    expect([speed?.renewalRateHz, speed?.resolution, speed?.min, speed?.max]).toEqual([0, 0, 0, 0]);
  });
});

describe('an analogue recorder', () => {
  it('records 1000 rows a second in the steps of its converter', () => {
    const options = { rateHz: 1000, stepV: 5 / 1023, noiseV: 0.004, spikesPerS: 0, spikeV: 0 };
    const { channels } = asCapture(recordAnalogue(DRIVE, [frontVolts(1)], options, createRandom(4)), 'analogue');
    expect(channels[0]?.facts.medianRateHz).toBeCloseTo(1000, 6);
    expect(channels[0]?.facts.resolution).toBeCloseTo(5 / 1023, 9);
  });
});
