import { ROLE_FACTS, ROLES, type Role } from '../../core/capture/roles.ts';
import type { ColumnGuess } from '../../core/reading/readCapture.ts';
import { UNIT_TABLE } from '../../core/units/unitTable.ts';
import { numberWords } from '../words/numbers.ts';
import { BANK_CHOICES, type BankValue, bankOf, bankValue } from './bankChoice.ts';

interface ColumnRowProps {
  readonly guess: ColumnGuess;
  /** Cells of the first rows, as text. */
  readonly examples: readonly string[];
  onChange(guess: ColumnGuess): void;
}

const PLAYS: readonly { value: ColumnGuess['role']; words: string }[] = [
  { value: 'time', words: 'Time' },
  ...ROLES.map((role) => ({ value: role, words: ROLE_FACTS[role].words })),
  { value: 'ignore', words: 'Leave out' },
];

/** One column: what it holds, what it is taken for, and why. */
export function ColumnRow({ guess, examples, onChange }: ColumnRowProps) {
  const { name, role, bank, sensor, unit, certain, because } = guess;
  const isChannel = role !== 'time' && role !== 'ignore';
  const called = name === '' ? `column ${guess.index + 1}` : name;
  return (
    <tr className={certain ? '' : 'unsure'}>
      <th scope="row">
        {called}
        <span className="channelRole soft">{certain ? because : `Not certain: ${because}`}</span>
      </th>
      <td className="examples">{examples.slice(0, 3).join(', ')}</td>
      <td>
        <select
          className="bareField"
          aria-label={`${called} is`}
          value={role}
          onChange={(event) => {
            const chosen = PLAYS.find((one) => one.value === event.target.value);
            if (chosen !== undefined) onChange({ ...guess, role: chosen.value });
          }}
        >
          {PLAYS.map(({ value, words }) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
      </td>
      <td>
        {isChannel && (
          <select
            className="bareField"
            aria-label={`Bank of ${called}`}
            value={bankValue(bank)}
            onChange={(event) => onChange({ ...guess, bank: bankOf(chosenBank(event.target.value)) })}
          >
            {BANK_CHOICES.map(({ value, words }) => (
              <option key={value} value={value}>
                {words}
              </option>
            ))}
          </select>
        )}
      </td>
      <td>
        {isChannel && (
          <select
            className="bareField"
            aria-label={`Sensor number of ${called}`}
            value={sensor ?? ''}
            onChange={(event) =>
              onChange({ ...guess, sensor: event.target.value === '' ? null : Number(event.target.value) })
            }
          >
            <option value="">none</option>
            {[1, 2, 3, 4].map((number) => (
              <option key={number} value={number}>
                {number}
              </option>
            ))}
          </select>
        )}
      </td>
      <td>
        {isChannel && (
          <select
            className="bareField"
            aria-label={`Unit of ${called}`}
            value={unit ?? ''}
            onChange={(event) => onChange({ ...guess, unit: event.target.value === '' ? null : event.target.value })}
          >
            {unitChoices(role, unit).map((one) => (
              <option key={one} value={one}>
                {one === '' ? 'not said' : one}
              </option>
            ))}
          </select>
        )}
      </td>
      <td className="figure">{rangeWords(guess)}</td>
    </tr>
  );
}

function chosenBank(value: string): BankValue {
  return BANK_CHOICES.find((choice) => choice.value === value)?.value ?? 'all';
}

/** Units of the role's quantity, and the one the file has. */
function unitChoices(role: Role, unit: string | null): string[] {
  const own = UNIT_TABLE.find((row) => row.symbol === ROLE_FACTS[role].unit);
  const same = UNIT_TABLE.filter((row) => role === 'other' || row.quantity === own?.quantity).map((row) => row.symbol);
  return [...new Set(['', ...(unit === null ? [] : [unit]), ...same])];
}

function rangeWords({ role, min, max }: ColumnGuess): string {
  if (role === 'time' || role === 'ignore') return 'none';
  if (min === null || max === null) return 'not recorded';
  const digits = Math.max(Math.abs(min), Math.abs(max)) < 20 ? 2 : 0;
  return `${numberWords(min, digits)} to ${numberWords(max, digits)}`;
}
