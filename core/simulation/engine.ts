import type {
  Celsius,
  GramsPerSecond,
  KilometresPerHour,
  Percent,
  RevolutionsPerMinute,
  Seconds,
} from '../units/quantities.ts';
import type { DriveScript } from './driveScript.ts';
import type { Random } from './random.ts';
import type { VehicleParameters } from './vehicle.ts';
import { createWander, lagShare } from './wander.ts';

/** What the engine as a whole does at a moment. */
export interface EngineState {
  rpm: RevolutionsPerMinute;
  load: Percent;
  /** Air through the whole engine. */
  air: GramsPerSecond;
  throttle: Percent;
  speed: KilometresPerHour;
  coolantC: Celsius;
  fuelCut: boolean;
  /** Lambda wanted by the computer: below 1 for enrichment, and after a fuel cut. */
  lambdaGoal: number;
  /** Closed loop for what the engine as a whole asks; a bank may still be open. */
  closedLoop: boolean;
  /** Change of load, share of full load a second. */
  loadRate: number;
  /** True while fuel is added after a cut to empty the converter; a bank ends it early when its rear sensor is rich. */
  purging: boolean;
  /** Seconds since fuel returned after a cut. */
  sinceCutS: Seconds;
}

/** Density of the intake air, g/L, at 25 °C and 101.3 kPa. */
const AIR_DENSITY = 1.184;
/** Speed by which wanders are said, and the idle speed. */
const NOMINAL_RPM: RevolutionsPerMinute = 2250;
const IDLE_RPM: RevolutionsPerMinute = 760;
const FUEL_RETURNS_BELOW = 1150;
const CUT_DELAY_S = 0.25;

/**
 * Air flow of a four-stroke engine: one filling of the displacement every second turn, times the calculated load.
 * 2 L at 2250 1/min and 25 % load: 2 * 18.75 * 1.184 * 0.25 = 11.1 g/s.
 */
export function airFlow(litres: number, rpm: RevolutionsPerMinute, load: Percent): GramsPerSecond {
  return (litres * rpm * AIR_DENSITY * load) / (120 * 100);
}

/** Load of the unloaded engine at a speed: the idle's falls to the hold's, and is least in overrun. */
function ownLoad(vehicle: VehicleParameters, rpm: RevolutionsPerMinute, closed: boolean): Percent {
  const { idleLoad, holdLoad } = vehicle.engine;
  if (closed && rpm > 1000) return Math.max(8, idleLoad * 0.55);
  const toHold = Math.min(1.6, Math.max(0, (rpm - IDLE_RPM) / (NOMINAL_RPM - IDLE_RPM)));
  return idleLoad + (holdLoad - idleLoad) * toHold;
}

/** The engine as a stepper along a drive; the state is changed in place and returned. */
export function createEngine(
  vehicle: VehicleParameters,
  drive: DriveScript,
  startCoolantC: Celsius,
  random: Random,
  stepS: Seconds,
): (timeS: Seconds) => EngineState {
  const { engine } = vehicle;
  const rpmWander = createWander(random.fork(1), engine.rpmWander, 1.5, stepS);
  const loadWander = createWander(random.fork(2), engine.loadWander, 2.5, stepS);
  const thermostat = createWander(random.fork(3), 0.9, 25, stepS);
  const rpmShare = lagShare(0.12, stepS);
  const loadShare = lagShare(0.06, stepS);
  const state = startState(startCoolantC, ownLoad(vehicle, IDLE_RPM, false));
  let at = 0;
  let closedForS = 0;
  return (timeS) => {
    while (at + 2 < drive.points.length && (drive.points[at + 1]?.timeS ?? 0) <= timeS) at++;
    const asked = askedAt(drive, at, timeS);
    if (!asked) return state;
    const { closed } = asked;
    state.rpm += (asked.rpm * (1 + rpmWander() / NOMINAL_RPM) - state.rpm) * rpmShare;
    state.speed = asked.speed;
    const wanted = (asked.load ?? ownLoad(vehicle, state.rpm, closed)) * (1 + loadWander());
    const before = state.load;
    state.load += (wanted - state.load) * loadShare;
    state.loadRate = (state.load - before) / 100 / stepS;
    state.air = airFlow(vehicle.litres, state.rpm, state.load);
    state.throttle = throttleOf(state, closed);
    state.coolantC += ((engine.coolantGoalC - state.coolantC) * stepS * (0.6 + state.load / 60)) / engine.coolantTauS;
    state.coolantC += thermostat() * stepS * 0.04;
    closedForS = closed ? closedForS + stepS : 0;
    stepFuelCut(state, engine.cutAbove, closedForS, stepS);
    stepGoal(state, engine);
    return state;
  };
}

/** What the driver asks for between point `at` of the drive and the next. */
function askedAt({ points }: DriveScript, at: number, timeS: Seconds) {
  const from = points[at];
  const to = points[at + 1] ?? from;
  if (!from || !to) return null;
  const part = to.timeS > from.timeS ? Math.min(1, (timeS - from.timeS) / (to.timeS - from.timeS)) : 1;
  return {
    closed: from.throttle === 'closed' && to.throttle === 'closed',
    rpm: from.rpm + (to.rpm - from.rpm) * part,
    speed: from.speed + (to.speed - from.speed) * part,
    load: to.load,
  };
}

function startState(coolantC: Celsius, load: Percent): EngineState {
  return {
    rpm: IDLE_RPM,
    load,
    air: 0,
    throttle: 12,
    speed: 0,
    coolantC,
    fuelCut: false,
    lambdaGoal: 1,
    closedLoop: true,
    loadRate: 0,
    purging: false,
    sinceCutS: 1000,
  };
}

/** Throttle angle as a data list shows it: about 12 % closed, rising with air flow over speed. */
function throttleOf(state: EngineState, closed: boolean): Percent {
  if (closed) return 11.8;
  return Math.min(88, 9 + state.load * 0.17 + (state.rpm * state.load) / 11000);
}

function stepFuelCut(state: EngineState, cutAbove: RevolutionsPerMinute, closedForS: Seconds, stepS: Seconds): void {
  const was = state.fuelCut;
  if (state.fuelCut) state.fuelCut = closedForS > 0 && state.rpm > FUEL_RETURNS_BELOW;
  else state.fuelCut = closedForS > CUT_DELAY_S && state.rpm > cutAbove && state.coolantC > 45;
  if (was && !state.fuelCut) state.sinceCutS = 0;
  else state.sinceCutS += stepS;
}

/** Enrichment at high load and after a cut; open loop when cold, cut or enriched. */
function stepGoal(state: EngineState, engine: VehicleParameters['engine']): void {
  const enriched = state.load > 70;
  const cold = Math.max(0, Math.min(1, (30 - state.coolantC) / 40));
  state.purging = state.sinceCutS < engine.purgeS;
  state.lambdaGoal = enriched ? 0.89 : 1 - 0.12 * cold;
  state.closedLoop = !state.fuelCut && !enriched && state.coolantC > 30;
}
