import { privateCell } from '../privacy.ts';
import type { Fact } from '../sheet.ts';
import type { SheetInput } from '../sheetInput.ts';
import { textCell } from '../words/numbers.ts';
import type { SectionMaker } from './section.ts';
import { mileageCell, yearCell } from './vehicle.ts';

/**
 * The items that a shop in the United States keeps on paper when it fits an aftermarket converter: EPA policy of 5 August
 * 1986, 51 FR 28113 to 28119 and 52 FR 42144, which EPA left in force in 85 FR 80782 (checks 2.11 to 2.14).
 */
export const papers: SectionMaker = {
  id: 'papers',
  build(input) {
    return {
      id: 'papers',
      title: 'Papers of a replacement',
      blocks: [
        { kind: 'paragraph', tone: 'plain', text: WHAT_FOR },
        { kind: 'facts', id: 'papers', facts: items(input) },
        {
          kind: 'blanks',
          id: 'needSignatures',
          lines: [
            'Statement of need, signature of the customer and date',
            'Statement of need, signature of the shop and date',
          ],
        },
        { kind: 'paragraph', tone: 'small', text: KEEP },
      ],
    };
  },
};

const WHAT_FOR =
  'For shops in the United States: what the EPA policy of 5 August 1986 asks to have on paper before an aftermarket converter is fitted. It allows one only where the original is missing, where an inspection ordered it, or where the warranty has ended and the need is shown and written down. A trouble code alone does not show the need. Other places have other rules.';

const KEEP =
  'By that policy the papers are kept for 6 months, and the old converter, tagged with the vehicle it came from, for 15 days. The new part has to be of the same kind, in the same place and listed for the vehicle. California allows only converters with an Executive Order for the vehicle.';

const ANSWERS = { yes: 'yes', no: 'no', unknown: '' } as const;

function items({ record, settings }: SheetInput): Fact[] {
  const { identity, papers: kept } = record;
  const sign = settings.decimalSign;
  return [
    {
      id: 'customer',
      words: "Customer's name and address",
      value: privateCell(identity.customer, settings.include.customer),
    },
    { id: 'make', words: 'Make of the vehicle', value: textCell(kept.make) },
    { id: 'modelYear', words: 'Model year', value: yearCell(identity.modelYear) },
    { id: 'mileage', words: 'Mileage', value: mileageCell(identity.mileage, sign) },
    { id: 'reason', words: 'Reason for the replacement', value: textCell(kept.reason) },
    {
      id: 'inspectionOrdered',
      words: 'Ordered by a state or local inspection',
      value: textCell(ANSWERS[kept.inspectionOrdered]),
    },
    {
      id: 'statementSigned',
      words: 'Statement of need signed by customer and shop',
      value: textCell(ANSWERS[kept.statementSigned]),
    },
    { id: 'partFitted', words: 'Part fitted', value: textCell(kept.partFitted) },
    { id: 'fittedOn', words: 'Fitted on', value: textCell(kept.fittedOn ?? '') },
    { id: 'oldPartTag', words: 'Tag on the old converter', value: textCell(kept.oldPartTag) },
  ];
}
