// Cautions where the work can hurt somebody (common practice, no source). Local law is deferred to, never interpreted.

export interface Caution {
  readonly id: string;
  readonly words: string;
}

export const CAUTIONS: readonly Caution[] = [
  { id: 'hot', words: 'Exhaust parts reach 300 to 600 °C, more after a misfire. Keep hands, leads and sleeves clear.' },
  {
    id: 'gas',
    words: 'Exhaust gas holds carbon monoxide, which has no smell and kills. Lead it outside or run the extraction.',
  },
  { id: 'stands', words: 'Put a raised vehicle on stands. Never work under a car that a jack alone holds.' },
  { id: 'turning', words: 'Keep clear of belts, fans and wheels; an electric fan starts by itself.' },
  {
    id: 'fire',
    words: 'Hot exhaust sets dry grass, rags and spilt fuel alight. Look at the ground under the car first.',
  },
  { id: 'propane', words: 'Propane: no flame, a small flow, good air.' },
  { id: 'road', words: 'On the road a second person reads the instrument. Do not drive with a flashing engine light.' },
  {
    id: 'law',
    words:
      'Removing or defeating emission equipment is unlawful in many places. Which part may be fitted, and by whom, is a matter of local law.',
  },
  { id: 'decides', words: 'The program gives evidence. The licensed technician decides.' },
];

const BENCH = ['gas', 'hot'] as const;
const UNDER = ['hot', 'stands', 'turning'] as const;

/** Which cautions belong to which test of core/findings/nextTests; none is without one: the engine runs in each. */
const OF_TEST: Readonly<Record<string, readonly string[]>> = {
  hold: BENCH,
  holdLonger: BENCH,
  warmUp: [...BENCH, 'fire'],
  closedLoopHold: BENCH,
  snap: BENCH,
  fuelCutCoast: ['road', 'fire'],
  fasterInstrument: BENCH,
  frontSensorCheck: UNDER,
  rearSensorCheck: UNDER,
  leakCheck: UNDER,
  exchangeCheck: [...BENCH, 'propane'],
  trimsCheck: ['turning', 'gas'],
  misfireCheck: [...BENCH, 'turning'],
  misfireRepair: [...BENCH, 'fire'],
  monitorsRun: ['road', 'fire'],
  thermal: [...BENCH, 'stands', 'fire'],
  recordRear: BENCH,
  recordFront: BENCH,
  gasBeforeAfter: [...BENCH, 'stands'],
  twin: BENCH,
};

/** Cautions of some tests, each once, in the order of the list. */
export function cautionsOfTests(testIds: readonly string[]): readonly Caution[] {
  const wanted = new Set(testIds.flatMap((id) => OF_TEST[id] ?? []));
  return CAUTIONS.filter(({ id }) => wanted.has(id));
}

/** The cautions with these ids, in the order of the list. */
export function cautions(...ids: readonly string[]): readonly Caution[] {
  return CAUTIONS.filter(({ id }) => ids.includes(id));
}
