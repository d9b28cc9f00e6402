import { useId } from 'react';

interface CheckFieldProps {
  readonly label: string;
  readonly checked: boolean;
  readonly hint?: string;
  onChecked(checked: boolean): void;
}

/** A yes or no, with its words to the right. */
export function CheckField({ label, checked, hint, onChecked }: CheckFieldProps) {
  const id = useId();
  return (
    <div className="checkField">
      <input
        id={id}
        type="checkbox"
        checked={checked}
        aria-describedby={hint === undefined ? undefined : `${id}-hint`}
        onChange={(event) => onChecked(event.target.checked)}
      />
      <label htmlFor={id}>{label}</label>
      {hint !== undefined && (
        <p className="fieldHint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
}
