import { registry } from '../../registry.ts';

/** A test a diagnostician can make. */
export interface TestRule {
  readonly id: string;
  /** What to do, in the imperative. */
  readonly words: string;
  /** A rough figure of the trade (common practice, no source). */
  readonly minutes: number;
}

function test(id: string, minutes: number, words: string): TestRule {
  return { id, words, minutes };
}

/** Every test the core may ask for. */
export const TEST_LIST: readonly TestRule[] = registry('test', (one) => one.id, [
  test(
    'hold',
    5,
    'Warm the engine up, hold it at a steady 2000 to 2500 1/min for a minute and record both sensors. Lead the exhaust outside.',
  ),
  test('holdLonger', 4, 'Hold 2000 to 2500 1/min again, steady, for a full minute.'),
  test(
    'warmUp',
    12,
    'Run the engine at 2500 1/min for three minutes, or drive it for ten, and record the hold again straight away. Hot exhaust: keep clear.',
  ),
  test('closedLoopHold', 6, 'Wait for closed loop, note the fuel system status, and record the hold again.'),
  test('snap', 3, 'Add a snap of the throttle to the capture: the rear sensor should go rich, then lean.'),
  test(
    'fuelCutCoast',
    8,
    'Record a coast-down from 70 km/h in gear with the foot off the pedal for at least three seconds, then light throttle: the rear sensor must fall below 0.2 V and come back.',
  ),
  test('fasterInstrument', 10, 'Record again with fewer items in the data list, or with a faster instrument.'),
  test(
    'frontSensorCheck',
    20,
    'Check the front sensor: edge time and span on a snap, heater, wiring, part number. Replace it if it stays lazy, then record again.',
  ),
  test('rearSensorCheck', 20, 'Check the rear sensor: heater, wiring, and its answer to a snap and a fuel cut.'),
  test(
    'leakCheck',
    20,
    'Check the exhaust for leaks from the engine to behind the rear sensor: smoke or low-pressure air at the tailpipe, soapy water.',
  ),
  test('exchangeCheck', 10, 'Check connectors and channels: enrich one bank for a moment and see which trace moves.'),
  test(
    'trimsCheck',
    25,
    'Find the cause of the trims: intake leak, fuel pressure, purge valve, air-flow sensor; compare idle with 2500 1/min.',
  ),
  test(
    'misfireCheck',
    15,
    'Read the misfire counters and compare cylinders; look for a leak ahead of the front sensor; compare the trims at idle with those at 2500 1/min.',
  ),
  test(
    'monitorsRun',
    30,
    'Drive until the monitors of misfire, fuel system and oxygen sensors have finished, read codes and readiness again, and record the hold again.',
  ),
  test('misfireRepair', 45, 'Find and repair the misfire first, then record the hold again.'),
  test(
    'thermal',
    6,
    'Take inlet and outlet surface temperatures after three minutes at 2500 1/min, three times, same kind of spot. Hot parts: keep clear.',
  ),
  test('recordRear', 5, 'Record the sensor behind the converter too.'),
  test('recordFront', 5, 'Record the sensor ahead of the converter too.'),
  test(
    'gasBeforeAfter',
    30,
    'Measure CO and HC before and after the converter where there is a sampling point, warm, at 2500 1/min.',
  ),
  test('twin', 20, 'Record the same hold on a healthy twin of this vehicle and compare.'),
]);

const BY_ID = new Map(TEST_LIST.map((one) => [one.id, one]));

/** The rule of a test; an id that is not in the list is a mistake in the program. */
export function testRule(id: string): TestRule {
  const found = BY_ID.get(id);
  if (!found) throw new Error(`No test is called "${id}".`);
  return found;
}
