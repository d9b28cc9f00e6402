import type { CheckedLink } from '../../opinions/chain.ts';
import { compareOpinions } from '../../opinions/compareOpinions.ts';
import { confidenceWords } from '../../opinions/confidence.ts';
import { withdrawalOf } from '../../opinions/withdrawn.ts';
import type { Opinion, RestingWindow, Signed } from '../../record/opinionSchema.ts';
import { privateCell } from '../privacy.ts';
import type { Block, Cell, Fact } from '../sheet.ts';
import type { SheetInput } from '../sheetInput.ts';
import { numberCell, textCell } from '../words/numbers.ts';
import {
  coreSaidWords,
  DISAGREEMENT_WORDS,
  differenceSentence,
  LINK_SENTENCES,
  lookingWords,
  restingWords,
  SIGNING_DOES_NOT_SHOW,
  SIGNING_SHOWS,
} from '../words/opinions.ts';
import { instantWords } from '../words/quantities.ts';
import { FINDING_WORDS } from '../words/terms.ts';
import type { SectionMaker } from './section.ts';

/** What readers signed, in the order of the chain. Withdrawn opinions stay and say so; nothing is averaged. */
export const opinions: SectionMaker = {
  id: 'opinions',
  build(input) {
    const blocks = input.opinions.flatMap((link) =>
      link.entry.kind === 'opinion' ? opinionBlocks(link.entry, link, input) : [],
    );
    if (blocks.length === 0) return null;
    return {
      id: 'opinions',
      title: 'Opinions',
      blocks: [
        { kind: 'paragraph', tone: 'plain', text: `Two opinions stay two; nobody averages them. ${SIGNING_SHOWS}` },
        { kind: 'paragraph', tone: 'caution', text: SIGNING_DOES_NOT_SHOW },
        ...blocks,
      ],
    };
  },
};

function opinionBlocks(opinion: Opinion, link: CheckedLink, input: SheetInput): Block[] {
  const withdrawn = withdrawalOf(entriesOf(input), opinion.id);
  const mark = withdrawn === null ? '' : ' (withdrawn)';
  return [
    {
      kind: 'subheading',
      level: 3,
      text: `${readerWords(opinion, input)}, ${instantWords(opinion.signedAt)}: ${FINDING_WORDS[opinion.finding]}${mark}`,
    },
    {
      kind: 'facts',
      id: `opinion.${opinion.id}`,
      facts: [
        ...saidFacts(opinion, input),
        ...(opinion.answers === null ? [] : answerFacts(opinion, opinion.answers, input)),
        ...(withdrawn === null
          ? []
          : [
              fact(
                'withdrawn',
                'Withdrawn',
                `${readerWords(withdrawn, input)}, ${instantWords(withdrawn.signedAt)}: ${withdrawn.reason}`,
              ),
            ]),
        fact('chain', 'Chain', `${LINK_SENTENCES[link.state]} ${recordWords(link)}`),
        fact('sha256', 'SHA-256 of the opinion', link.sha256),
      ],
    },
    ...(opinion.windows.length === 0 ? [NO_WINDOWS] : [windowTable(opinion, input)]),
  ];
}

function saidFacts(opinion: Opinion, { settings }: SheetInput): Fact[] {
  const { author, finding, confidence, reasons, nextTest, coreVersion, signedAt } = opinion;
  const named = settings.include.signers;
  const looking = lookingWords(opinion);
  return [
    fact('finding', 'Finding', FINDING_WORDS[finding]),
    { id: 'confidence', words: 'How sure', value: numberCell(confidence, 0, '%', settings.decimalSign) },
    fact('confidenceWords', 'That is', confidenceWords(confidence)),
    { id: 'author', words: 'Signed by', value: privateCell(author.name, named) },
    { id: 'licence', words: 'Licence', value: privateCell(author.licence, named) },
    fact('signedAt', 'Signed', instantWords(signedAt)),
    ...(looking === null ? [] : [fact('looking', 'Blind reading', looking)]),
    fact('coreVersion', 'With version', coreVersion),
    { id: 'reasons', words: 'Reasons', value: textCell(reasons) },
    { id: 'nextTest', words: 'The test that would settle it', value: textCell(nextTest) },
  ];
}

function answerFacts(opinion: Opinion, answers: string, input: SheetInput): Fact[] {
  const other = entriesOf(input).find(({ id }) => id === answers);
  const why = opinion.disagreement === null ? '' : `; disagrees because ${DISAGREEMENT_WORDS[opinion.disagreement]}`;
  if (other?.kind !== 'opinion') return [fact('answers', 'Answers', `an opinion that is not here${why}`)];
  return [
    fact('answers', 'Answers', `${readerWords(other, input)}, ${instantWords(other.signedAt)}${why}`),
    fact(
      'differs',
      'What differs first, after that one',
      differenceSentence(compareOpinions(other, opinion), input.settings.decimalSign),
    ),
  ];
}

function windowTable(opinion: Opinion, { record, settings }: SheetInput): Block {
  const row = (window: RestingWindow): Cell[] => [
    { kind: 'text', text: restingWords(window, record, settings.decimalSign) },
    { kind: 'text', text: coreSaidWords(window, settings.decimalSign) },
    { kind: 'text', text: window.captureSha256 },
  ];
  return {
    kind: 'table',
    id: `opinion.${opinion.id}.windows`,
    caption: 'Windows it rests on, as they stood when it was signed',
    columns: [
      { id: 'window', words: 'Window', unit: null, align: 'left' },
      { id: 'coreSaid', words: 'What the core said', unit: null, align: 'left' },
      { id: 'sha256', words: 'SHA-256 of the capture', unit: null, align: 'left' },
    ],
    rows: opinion.windows.map(row),
  };
}

const NO_WINDOWS: Block = { kind: 'paragraph', tone: 'small', text: 'It rests on no window.' };

/** The signer's name, or where names are left out "Reader 2": the same signer has the same number. */
function readerWords({ author }: Signed, input: SheetInput): string {
  if (input.settings.include.signers) return author.name;
  const signers = entriesOf(input).map((entry) => `${entry.author.name}\n${entry.author.licence}`);
  const number = [...new Set(signers)].indexOf(`${author.name}\n${author.licence}`) + 1;
  return `Reader ${number}`;
}

function recordWords({ sameRecord }: CheckedLink): string {
  return sameRecord
    ? 'The record still is what its signer was given.'
    : 'The record is not what its signer was given: it has been worked on since, or came another way.';
}

const entriesOf = ({ opinions: links }: SheetInput): Signed[] => links.map(({ entry }) => entry);

function fact(id: string, words: string, text: string): Fact {
  return { id, words, value: { kind: 'text', text } };
}
