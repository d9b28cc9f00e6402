import { Field } from './Field.tsx';

interface DateFieldProps {
  readonly label: string;
  /** ISO 8601 day, or null. */
  readonly value: string | null;
  readonly hint?: string;
  onValue(value: string | null): void;
}

/** A day, in the order of the reader's place. */
export function DateField({ label, value, hint, onValue }: DateFieldProps) {
  return (
    <Field label={label} {...(hint === undefined ? {} : { hint })}>
      {({ id, describedBy }) => (
        <input
          id={id}
          type="date"
          value={value ?? ''}
          aria-describedby={describedBy}
          onChange={(event) => onValue(event.target.value === '' ? null : event.target.value)}
        />
      )}
    </Field>
  );
}
