import { useEffect, useRef, useState } from 'react';
import { bothReadings, typedNumber } from '../words/numbers.ts';
import { Field } from './Field.tsx';

interface NumberFieldProps {
  readonly label: string;
  readonly value: number | null;
  readonly unit?: string;
  readonly hint?: string;
  readonly min?: number;
  readonly max?: number;
  readonly whole?: boolean;
  /** An amount of money, which nobody writes with three decimals. */
  readonly money?: boolean;
  readonly autoFocus?: boolean;
  readonly className?: string;
  /** Null where the field was emptied. Called when the field is left or Enter is pressed, never for half a number. */
  onValue(value: number | null): void;
}

/** A number with its unit, given when it is whole and right, and when the field goes. Takes both decimal signs, keeps what was typed, and says what is wrong with it. */
export function NumberField(props: NumberFieldProps) {
  const { label, value, unit, hint, autoFocus, className, onValue } = props;
  const [typed, setTyped] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const text = typed ?? (value === null ? '' : String(value));

  // A field that goes while it is typed in, with its dialog or its tab, gives what was typed all the same.
  const latest = useRef({ typed, props });
  latest.current = { typed, props };
  useEffect(
    () => () => {
      const { typed: left, props: last } = latest.current;
      if (left === null || whatIsWrong(left, last) !== null) return;
      const read = typedNumber(left);
      if (read !== last.value) last.onValue(read);
    },
    [],
  );

  const settle = (): void => {
    if (typed === null) return;
    const wrong = whatIsWrong(typed, props);
    setProblem(wrong);
    if (wrong !== null) return;
    setTyped(null);
    const read = typedNumber(typed);
    if (read !== value) onValue(read);
  };

  return (
    <Field
      label={label}
      problem={problem}
      {...(unit === undefined ? {} : { unit })}
      {...(hint === undefined ? {} : { hint })}
      {...(className === undefined ? {} : { className })}
    >
      {({ id, describedBy, invalid }) => (
        <input
          id={id}
          className="number"
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-describedby={describedBy}
          aria-invalid={invalid}
          data-autofocus={autoFocus || undefined}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={settle}
          onKeyDown={(event) => {
            if (event.key === 'Enter') settle();
          }}
        />
      )}
    </Field>
  );
}

type Limits = Pick<NumberFieldProps, 'min' | 'max' | 'whole' | 'money'>;

/** A sentence that says what to type instead, or null. An emptied field is not wrong. */
export function whatIsWrong(typed: string, { min, max, whole, money }: Limits): string | null {
  if (typed.trim() === '') return null;
  const value = typedNumber(typed);
  if (whole === true && !/^[+−-]?\d+$/.test(typed.trim())) return 'Type a whole number, without a point or a comma.';
  if (value === null) return 'This is not a number. Type digits with a point or a comma.';
  const readings = bothReadings(typed, money)?.filter((one) => isWithin(Number(one), min, max));
  if (readings?.length === 2) return `This can be read in two ways. Type ${readings.join(' or ')}.`;
  if (min !== undefined && value < min) return `Type ${min} or more.`;
  if (max !== undefined && value > max) return `Type ${max} or less.`;
  return null;
}

function isWithin(value: number, min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY): boolean {
  return value >= min && value <= max;
}
