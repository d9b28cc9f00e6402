import { definedBy, troubleCodeMeaning } from '../troubleCodeMeanings.ts';
import { CODE_STATUS_WORDS } from '../words/terms.ts';
import type { SectionMaker } from './section.ts';

/** Trouble codes with their meanings, and what a catalyst code does not prove. */
export const troubleCodes: SectionMaker = {
  id: 'troubleCodes',
  build({ record }) {
    const codes = Object.values(record.troubleCodes).sort((a, b) => (a.code < b.code ? -1 : 1));
    if (codes.length === 0) {
      return {
        id: 'troubleCodes',
        title: 'Trouble codes',
        blocks: [{ kind: 'paragraph', tone: 'plain', text: 'Not recorded.' }],
      };
    }
    const catalyst = codes.some(({ code }) => /^P04[23]\d$/.test(code));
    return {
      id: 'troubleCodes',
      title: 'Trouble codes',
      blocks: [
        {
          kind: 'table',
          id: 'troubleCodes',
          caption: 'Codes found on the vehicle (meanings by SAE J2012, in our words)',
          columns: [
            { id: 'code', words: 'Code', unit: null, align: 'left' },
            { id: 'status', words: 'Status', unit: null, align: 'left' },
            { id: 'meaning', words: 'Meaning', unit: null, align: 'left' },
          ],
          rows: codes.map(({ code, status }) => [
            { kind: 'text', text: code },
            status === 'unknown'
              ? { kind: 'none', words: 'not recorded' }
              : { kind: 'text', text: CODE_STATUS_WORDS[status] },
            { kind: 'text', text: meaningWords(code) },
          ]),
        },
        ...(catalyst ? [{ kind: 'paragraph', tone: 'small', text: NO_PROOF } as const] : []),
      ],
    };
  },
};

const NO_PROOF =
  'A catalyst code says that the monitor saw too little storage. A lazy sensor, a leak, a rich mixture, a misfire or a cold converter can set it too; by itself it is no proof that the converter has failed.';

function meaningWords(code: string): string {
  const meaning = troubleCodeMeaning(code);
  if (meaning !== null) return meaning;
  return definedBy(code) === 'maker'
    ? "one of the maker's own; see the service information"
    : 'see the service information';
}
