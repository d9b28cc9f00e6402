import { leftOutWords } from '../privacy.ts';
import type { SectionMaker } from './section.ts';

/** What was left out of this copy for privacy. */
export const leftOut: SectionMaker = {
  id: 'leftOut',
  build({ record, settings }) {
    const items = leftOutWords(record, settings.include);
    const text =
      items.length === 0 ? 'Nothing that is recorded was left out of this copy.' : 'For privacy this copy leaves out:';
    return {
      id: 'leftOut',
      title: 'Left out of this copy',
      blocks: [
        { kind: 'paragraph', tone: 'plain', text },
        ...(items.length === 0 ? [] : [{ kind: 'list', items } as const]),
      ],
    };
  },
};
