import { Field } from './Field.tsx';

export interface Choice<Value extends string> {
  readonly value: Value;
  readonly words: string;
}

interface SelectFieldProps<Value extends string> {
  readonly label: string;
  readonly value: Value;
  readonly choices: readonly Choice<Value>[];
  readonly hint?: string;
  readonly className?: string;
  readonly autoFocus?: boolean;
  onValue(value: Value): void;
}

/** One of a few words. */
export function SelectField<Value extends string>(props: SelectFieldProps<Value>) {
  const { label, value, choices, hint, className, autoFocus, onValue } = props;
  return (
    <Field label={label} {...(hint === undefined ? {} : { hint })} {...(className === undefined ? {} : { className })}>
      {({ id, describedBy }) => (
        <select
          id={id}
          value={value}
          aria-describedby={describedBy}
          data-autofocus={autoFocus || undefined}
          onChange={(event) => {
            const chosen = choices.find((choice) => choice.value === event.target.value);
            if (chosen !== undefined) onValue(chosen.value);
          }}
        >
          {choices.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.words}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

/** Choices from a table of words, in its order. */
export function choicesOf<Value extends string>(words: Readonly<Record<Value, string>>): readonly Choice<Value>[] {
  return (Object.keys(words) as Value[]).map((value) => ({ value, words: words[value] }));
}
