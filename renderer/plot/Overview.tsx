import type { OverviewProps } from './overviewProps.ts';

/** The strip with the whole capture, always in sight. */
export function Overview(props: OverviewProps) {
  return <section className="overview" aria-label={`Whole capture ${props.capture.name}`} />;
}
