import { Field } from './Field.tsx';
import { useTypedText } from './useTypedText.ts';

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly hint?: string;
  readonly problem?: string | null;
  readonly rows?: number;
  readonly autoFocus?: boolean;
  readonly className?: string;
  readonly maxLength?: number;
  onValue(value: string): void;
}

/** A line or a paragraph of text, kept while it is typed. */
export function TextField(props: TextFieldProps) {
  const { label, value, hint, problem = null, rows = 1, autoFocus, className, maxLength = 500, onValue } = props;
  const { text, type, leave } = useTypedText(value, onValue);
  return (
    <Field
      label={label}
      problem={problem}
      {...(hint === undefined ? {} : { hint })}
      {...(className === undefined ? {} : { className })}
    >
      {({ id, describedBy, invalid }) => {
        const shared = {
          id,
          value: text,
          maxLength,
          'aria-describedby': describedBy,
          'aria-invalid': invalid,
          'data-autofocus': autoFocus || undefined,
          onBlur: leave,
        };
        if (rows > 1) return <textarea {...shared} rows={rows} onChange={(event) => type(event.target.value)} />;
        return <input {...shared} autoComplete="off" onChange={(event) => type(event.target.value)} />;
      }}
    </Field>
  );
}
