import { FINDINGS } from '../../findings/finding.ts';
import { FINDING_WORDS } from '../words/terms.ts';
import type { SectionMaker } from './section.ts';

/** Room for somebody else to disagree in writing. */
export const secondReader: SectionMaker = {
  id: 'secondReader',
  build: () => ({
    id: 'secondReader',
    title: 'Second reader',
    blocks: [
      {
        kind: 'paragraph',
        tone: 'plain',
        text: 'Read the captures before the result above, write down your own finding, and say where you read differently. Two opinions stay two; nobody averages them.',
      },
      {
        kind: 'blanks',
        id: 'secondReader',
        lines: [
          `My finding (${FINDINGS.map((finding) => FINDING_WORDS[finding].toLowerCase()).join(', ')})`,
          'How sure I am, in per cent',
          'Windows and captures I looked at',
          'Where I read differently, and why',
          '',
          'The test that would settle it',
          'Name and licence',
          'Date and signature',
        ],
      },
    ],
  }),
};
