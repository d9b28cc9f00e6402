import { type ReactNode, useId } from 'react';

export interface FieldIds {
  readonly id: string;
  readonly describedBy: string | undefined;
  readonly invalid: true | undefined;
}

interface FieldProps {
  readonly label: string;
  /** Stands beside the number, and is part of what is read out. */
  readonly unit?: string;
  readonly hint?: string;
  /** What is wrong with what was typed and what to do, a sentence; it stays where it was typed. */
  readonly problem?: string | null;
  readonly className?: string;
  children(ids: FieldIds): ReactNode;
}

/** Label above, control, unit beside it, hint or problem below. */
export function Field({ label, unit, hint, problem = null, className, children }: FieldProps) {
  const id = useId();
  const hintId = `${id}-hint`;
  const problemId = `${id}-problem`;
  const described = [hint === undefined ? '' : hintId, problem === null ? '' : problemId].filter(Boolean).join(' ');
  return (
    <div className={`field${className === undefined ? '' : ` ${className}`}`}>
      <label htmlFor={id}>
        {label}
        {unit !== undefined && <span className="unseen">, {unit}</span>}
      </label>
      <div className="fieldLine">
        {children({
          id,
          describedBy: described === '' ? undefined : described,
          invalid: problem === null ? undefined : true,
        })}
        {unit !== undefined && (
          <span className="fieldUnit" aria-hidden="true">
            {unit}
          </span>
        )}
      </div>
      {hint !== undefined && (
        <p className="fieldHint" id={hintId}>
          {hint}
        </p>
      )}
      {problem !== null && (
        <p className="fieldProblem" id={problemId}>
          {problem}
        </p>
      )}
    </div>
  );
}
