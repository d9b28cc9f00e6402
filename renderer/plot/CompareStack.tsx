import type { CompareStackProps } from './compareStackProps.ts';

/** Two windows over each other on one time axis. */
export function CompareStack(props: CompareStackProps) {
  return <section className="compareStack" aria-label={`${props.first.label} and ${props.second.label}`} />;
}
