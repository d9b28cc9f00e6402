import type { SectionMaker } from './section.ts';

/** In the order in which they hurt. Common practice, no source. */
export const CAUTIONS: readonly string[] = [
  'Exhaust parts are hot enough to burn through gloves: several hundred degrees on the shell, and more after misfire.',
  'Carbon monoxide kills unseen. Run an engine only where its exhaust is led outside.',
  'A raised vehicle stands on stands, never on a jack alone.',
  'Keep hands, hair and cables away from fan and belts.',
  'A hot exhaust sets dry grass, rags and spilled fluids alight.',
  'Do not drive on with a flashing engine light: unburnt fuel melts the converter.',
  'To remove, empty or bypass a converter, or to feign its sensor, is unlawful in many places. Local law decides which part may be fitted, and by whom.',
];

/** The cautions of the work this sheet leads to. */
export const cautions: SectionMaker = {
  id: 'cautions',
  build: () => ({ id: 'cautions', title: 'Cautions', blocks: [{ kind: 'list', items: CAUTIONS }] }),
};
