import type { Included } from '../../core/evidence/sheetInput.ts';
import { CheckField } from '../widgets/CheckField.tsx';

const PRIVATE: readonly { field: keyof Included; words: string }[] = [
  { field: 'vin', words: 'Last six of the vehicle number' },
  { field: 'plate', words: 'Number plate' },
  { field: 'customer', words: 'Customer' },
  { field: 'complaint', words: 'Complaint' },
];

interface PrivateChoicesProps {
  readonly include: Included;
  onInclude(include: Included): void;
}

/** Private fields, which stay out of what is handed over unless they are ticked in. */
export function PrivateChoices({ include, onInclude }: PrivateChoicesProps) {
  return PRIVATE.map(({ field, words }) => (
    <CheckField
      key={field}
      label={words}
      checked={include[field]}
      onChecked={(checked) => onInclude({ ...include, [field]: checked })}
    />
  ));
}
