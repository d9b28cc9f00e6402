import type { BankVerdict, Verdict } from '../../findings/finding.ts';
import { startSentence } from '../../words/numbers.ts';
import type { Block } from '../sheet.ts';
import type { SheetInput } from '../sheetInput.ts';
import { bankWords } from '../words/terms.ts';
import { judgementBlocks } from './judgement.ts';
import type { SectionMaker } from './section.ts';

/** The verdict in words first, then each bank as it was found and, where there are captures of it, after the repair. */
export const result: SectionMaker = {
  id: 'result',
  build(input) {
    const { score, record, pictures } = input;
    const after = score.after === null ? [] : side('After the repair', 'after', score.after, input);
    const sample = Object.values(record.captures).some((capture) => capture.sample);
    return {
      id: 'result',
      title: 'Result',
      blocks: [
        { kind: 'paragraph', tone: 'lead', text: score.sentence },
        ...(sample ? [SAMPLE] : []),
        ...(record.identity.rearSensor === 'no' ? [NO_REAR_SENSOR] : []),
        ...side(score.after === null ? null : 'As it was found', 'before', score.before, input),
        ...after,
        ...pictures
          .filter(({ captureId }) => captureId === null)
          .map(({ captureId: _, ...picture }): Block => ({ kind: 'figure', ...picture })),
      ],
    };
  },
};

const SAMPLE: Block = {
  kind: 'paragraph',
  tone: 'caution',
  text: 'This sheet rests on sample drives that come with the program. They are invented and say nothing about any real vehicle.',
};

const NO_REAR_SENSOR: Block = {
  kind: 'paragraph',
  tone: 'plain',
  text: 'This vehicle has no oxygen sensor behind its converter. It can only be judged by temperature, which may support a finding and never makes one.',
};

/** The blocks of one side. A sentence that the sheet's first line has already said is not said twice. */
function side(
  heading: string | null,
  id: string,
  judged: { readonly verdict: Verdict; readonly banks: readonly BankVerdict[] },
  { settings, score }: SheetInput,
): Block[] {
  const sentence = (verdict: Verdict): Block[] =>
    score.sentence.includes(verdict.sentence) ? [] : [{ kind: 'paragraph', tone: 'plain', text: verdict.sentence }];
  const blocks: Block[] = heading === null ? [] : [{ kind: 'subheading', level: 3, text: heading }];
  if (judged.banks.length < 2) {
    return [
      ...blocks,
      ...sentence(judged.verdict),
      ...judgementBlocks(id, heading === null ? 3 : 4, judged.verdict, settings.decimalSign),
    ];
  }
  for (const bank of judged.banks) {
    blocks.push({
      kind: 'subheading',
      level: 3,
      text: heading === null ? startSentence(bankWords(bank.bank)) : `${heading}, ${bankWords(bank.bank)}`,
    });
    blocks.push(...sentence(bank), ...judgementBlocks(`${id}.bank${bank.bank ?? ''}`, 4, bank, settings.decimalSign));
  }
  return blocks;
}
