import type { Random } from '../random.ts';
import type { BankParameters, VehicleParameters } from '../vehicle.ts';
import type { ZirconiaParameters } from '../zirconia.ts';
import { type ConverterClass, drawCapacity } from './classes.ts';
import { CAR, CONTROL, CONVERTER, type DrawMode, draw, EXHAUST, FRONT, type Range, REAR, WIDEBAND } from './ranges.ts';

/** What a case fixes about its vehicle beforehand; the rest is drawn. */
export interface VehicleWish {
  readonly wideband: boolean;
  readonly twoBanks: boolean;
  /** Class of each bank's converter. */
  readonly classes: readonly ConverterClass[];
}

/** A sound vehicle but for its converters. */
export function drawVehicle(wish: VehicleWish, random: Random, mode: DrawMode): VehicleParameters {
  const litres = Math.max(wish.twoBanks ? 2.4 : 0, draw(CAR.litres, random, mode));
  const bankLitres = litres / (wish.twoBanks ? 2 : 1);
  const shape = random.fork(7);
  const banks = wish.classes.map((kind) => drawBank(kind, wish.wideband, bankLitres, shape, mode));
  return {
    litres,
    engine: {
      idleLoad: draw(CAR.idleLoad, random, mode),
      holdLoad: draw(CAR.holdLoad, random, mode),
      coolantGoalC: draw(CAR.coolantGoalC, random, 'inside'),
      coolantTauS: 170,
      cutAbove: draw(CAR.cutAbove, random, mode),
      purgeS: draw(CAR.purgeS, random, mode),
      rpmWander: draw(CAR.rpmWander, random, mode),
      loadWander: draw(CAR.loadWander, random, mode),
    },
    banks,
    exchanged: 'none',
  };
}

function drawBank(
  kind: ConverterClass,
  wideband: boolean,
  litres: number,
  random: Random,
  mode: DrawMode,
): BankParameters {
  const pick = (range: Range) => draw(range, random, mode);
  const storeRate = pick(CONVERTER.storeRate);
  const error = pick(CONTROL.error);
  return {
    control: drawControl(wideband, random, mode),
    front: wideband
      ? { kind: 'wideband', lagS: pick(WIDEBAND.lagS), bias: pick(WIDEBAND.bias) }
      : { kind: 'switching', cell: drawCell(FRONT, random, mode) },
    rear: drawCell(REAR, random, mode),
    converter: {
      capacityG: drawCapacity(kind, litres, random, mode),
      storeRate,
      releaseRate: storeRate * Math.min(1, pick(CONVERTER.releaseShare)),
      lightOffC: pick(CONVERTER.lightOffC),
      lightOffWidthK: pick(CONVERTER.lightOffWidthK),
      equilibriumSpan: pick(CONVERTER.equilibriumSpan),
    },
    secondBrick: null,
    exhaust: {
      frontLitres: litres * pick(EXHAUST.frontVolume),
      rearLitres: litres * pick(EXHAUST.rearVolume),
      mixingS: pick(EXHAUST.mixingS),
      startC: random.between(330, 480),
      idleGasC: pick(EXHAUST.idleGasC),
      holdGasC: pick(EXHAUST.holdGasC),
      warmTauS: pick(EXHAUST.warmTauS),
      exothermK: pick(EXHAUST.exothermK),
    },
    mixture: {
      error,
      drift: pick(CONTROL.drift),
      transient: pick(CONTROL.transient),
      unevenness: pick(CONTROL.unevenness),
      misfire: 0,
      openLoopFault: false,
      learned: -error * random.between(0.5, 1),
    },
    leaks: { aheadOfFront: 0, aheadOfRear: 0, beforeConverter: false, pulseHz: random.between(1.5, 6) },
  };
}

function drawControl(wideband: boolean, random: Random, mode: DrawMode): BankParameters['control'] {
  const pick = (range: Range) => draw(range, random, mode);
  return {
    kind: wideband ? 'linear' : 'relay',
    jump: pick(CONTROL.jump),
    ramp: pick(CONTROL.ramp),
    dither: pick(CONTROL.dither),
    ditherPeriodS: pick(CONTROL.ditherPeriodS),
    ditherSquare: random.chance(0.6),
    // One car in eight has no trim by the rear sensor: its converter may rest near full or near empty.
    rearGain: random.chance(0.125) ? 0 : pick(CONTROL.rearGain),
    rearGoalV: pick(CONTROL.rearGoalV),
    purge: pick(CONTROL.purge),
    shortLimit: 25,
    longLimit: 25,
    longTauS: pick(CONTROL.longTauS),
  };
}

function drawCell(ranges: typeof FRONT | typeof REAR, random: Random, mode: DrawMode): ZirconiaParameters {
  const pick = (range: Range) => draw(range, random, mode);
  return {
    temperatureC: pick(ranges.temperatureC),
    width: pick(ranges.width),
    shift: pick(ranges.shift),
    gasLagS: pick(ranges.gasLagS),
    fallLagS: pick(ranges.fallLagS),
    riseLagS: pick(ranges.riseLagS),
    span: pick(ranges.span),
    offsetV: pick(ranges.offsetV),
    noiseV: pick(ranges.noiseV),
    health: 'works',
    stuckV: 0.45,
  };
}
