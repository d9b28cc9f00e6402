import type { SectionMaker } from './section.ts';

/** What stands behind the numbers, and what does not: plainly, before anybody leans on them. */
export const restsOn: SectionMaker = {
  id: 'restsOn',
  build({ settings }) {
    return {
      id: 'restsOn',
      title: 'What the numbers rest on',
      blocks: [
        {
          kind: 'paragraph',
          tone: 'plain',
          text: 'The probability is calibrated on a simulated population, whose generator, seeds and parameters are part of the program; it has not been calibrated on road cars.',
        },
        {
          kind: 'paragraph',
          tone: 'plain',
          text: `The same files, the same windows and version ${settings.coreVersion} of Tailtrace give the same numbers on any computer. Intervals are for 95 % confidence. A value that its data cannot support is not given.`,
        },
        {
          kind: 'paragraph',
          tone: 'plain',
          text: 'Stored oxygen and the cleaning of exhaust gas are related but are not the same thing. This sheet is evidence; the licensed technician decides, and local law says which part may be fitted and by whom.',
        },
      ],
    };
  },
};
