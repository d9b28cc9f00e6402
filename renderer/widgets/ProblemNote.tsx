import { X } from 'lucide-react';
import type { ReactNode } from 'react';
import type { Problem } from '../../core/reading/problem.ts';
import { IconButton } from './Button.tsx';

interface ProblemNoteProps {
  readonly problem: Problem;
  readonly children?: ReactNode;
  onDismiss?(): void;
}

/** What happened, where, and what to do now; at the place where it happened. */
export function ProblemNote({ problem, children, onDismiss }: ProblemNoteProps) {
  return (
    <div className="problem" role="alert" data-problem={problem.id}>
      <div>
        <p className="problemWhat">{problem.what}</p>
        {problem.where !== '' && <p className="problemWhere">{problem.where}</p>}
        <p>{problem.doNext}</p>
        {children}
      </div>
      {onDismiss !== undefined && <IconButton icon={X} label="Dismiss" onPress={onDismiss} />}
    </div>
  );
}
