import { useEffect, useRef, useState } from 'react';
import { Field } from './Field.tsx';

interface DateFieldProps {
  readonly label: string;
  /** ISO 8601 day, or null. */
  readonly value: string | null;
  readonly hint?: string;
  /** Null where the field was emptied. Called when the field is left, never for half a day. */
  onValue(value: string | null): void;
}

/**
 * A day, in the order of the reader's place. It is given when the field is left or goes: a year that is typed digit by digit
 * is the years 2, 20 and 201 before it is 2019.
 */
export function DateField({ label, value, hint, onValue }: DateFieldProps) {
  const [typed, setTyped] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const latest = useRef({ typed, value, onValue });
  latest.current = { typed, value, onValue };
  const give = useRef((): void => {
    const { typed: text, value: kept, onValue: put } = latest.current;
    if (text === null || whatIsWrong(text) !== null || text === (kept ?? '')) return;
    put(text === '' ? null : text);
  });
  useEffect(() => () => give.current(), []);

  const leave = (field: HTMLInputElement): void => {
    const wrong = field.validity.badInput ? NOT_WHOLE : whatIsWrong(typed ?? '');
    setProblem(wrong);
    if (wrong !== null) return;
    give.current();
    setTyped(null);
  };
  return (
    <Field label={label} problem={problem} {...(hint === undefined ? {} : { hint })}>
      {({ id, describedBy, invalid }) => (
        <input
          id={id}
          type="date"
          value={typed ?? value ?? ''}
          aria-describedby={describedBy}
          aria-invalid={invalid}
          onChange={(event) => {
            // Half a day has no value of its own, and is not an emptied field.
            if (!event.target.validity.badInput) setTyped(event.target.value);
          }}
          onBlur={(event) => leave(event.target)}
        />
      )}
    </Field>
  );
}

const NOT_WHOLE = 'This is no whole day. Type day, month and year, or empty the field.';

/** A sentence that says what to type instead, or null. An emptied field is not wrong. */
export function whatIsWrong(day: string): string | null {
  return day === '' || Number(day.slice(0, 4)) >= 1900 ? null : 'Type the year with four digits.';
}
