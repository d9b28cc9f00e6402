import { FINDING_WORDS } from '../../../core/evidence/words/terms.ts';
import { opinionsOf } from '../../../core/opinions/withdrawn.ts';
import type { VehicleRecord } from '../../../core/record/schema.ts';
import type { Choice } from '../../widgets/SelectField.tsx';
import { instantWords } from '../../words/times.ts';

/** The opinions of a vehicle by their signer, the oldest first. */
export function opinionChoices(record: VehicleRecord): Choice<string>[] {
  return opinionsOf(Object.values(record.opinions))
    .sort((a, b) => Date.parse(a.signedAt) - Date.parse(b.signedAt))
    .map(({ id, author, finding, signedAt }) => ({
      value: id,
      words: `${author.name}, ${instantWords(signedAt)}: ${FINDING_WORDS[finding].toLowerCase()}`,
    }));
}
