import { warrantyReminder } from '../warranty.ts';
import { dayOf } from '../words/quantities.ts';
import type { SectionMaker } from './section.ts';

/** A reminder to ask about the emission warranty before anybody pays; never a legal opinion. */
export const warranty: SectionMaker = {
  id: 'warranty',
  build({ record, settings }) {
    const { words } = warrantyReminder(record.identity, dayOf(settings.madeAt));
    return {
      id: 'warranty',
      title: 'Emission warranty',
      blocks: [
        { kind: 'paragraph', tone: 'plain', text: words },
        {
          kind: 'paragraph',
          tone: 'small',
          text: 'Periods by 42 USC 7541 (Clean Air Act, section 207). This is a reminder and no legal opinion; outside the United States other rules hold, and the dealer or the authority knows which.',
        },
      ],
    };
  },
};
