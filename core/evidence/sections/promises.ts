import type { Block } from '../sheet.ts';
import type { SectionMaker } from './section.ts';

/** What a hash promises and what it does not (T-EV-6). */
export const promises: SectionMaker = {
  id: 'promises',
  build({ hash }) {
    const whole: Block[] =
      hash === null
        ? []
        : [
            {
              kind: 'facts',
              id: 'hash',
              facts: [{ id: 'sha256', words: `SHA-256 of ${hash.of}`, value: { kind: 'text', text: hash.sha256 } }],
            },
          ];
    return {
      id: 'promises',
      title: 'What the hashes show',
      blocks: [
        ...whole,
        {
          kind: 'paragraph',
          tone: 'plain',
          text: 'A SHA-256 hash shows whether a file is still the one this sheet was made for. Whoever has the same files can compute the numbers again and must get the same.',
        },
        {
          kind: 'paragraph',
          tone: 'plain',
          text: 'It does not show who made the sheet, when it was made, that a recording came from this vehicle, or that nothing was left out: whoever can change the files can write new hashes. What helps is to hand the hash over at once on another path, on paper or in a message. The first twelve digits are enough against a mistake, not against somebody who searches.',
        },
      ],
    };
  },
};
