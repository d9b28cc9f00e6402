import type { Bank } from '../../core/capture/roles.ts';
import type { Choice } from '../widgets/SelectField.tsx';

export type BankValue = 'all' | '1' | '2';

export const BANK_CHOICES: readonly Choice<BankValue>[] = [
  { value: 'all', words: 'Whole engine' },
  { value: '1', words: 'Bank 1' },
  { value: '2', words: 'Bank 2' },
];

export function bankValue(bank: Bank): BankValue {
  return bank === null ? 'all' : bank === 1 ? '1' : '2';
}

export function bankOf(value: BankValue): Bank {
  return value === 'all' ? null : value === '1' ? 1 : 2;
}
