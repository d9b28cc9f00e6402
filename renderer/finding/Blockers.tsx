import type { Blocker } from '../../core/findings/finding.ts';
import { TEST_LIST } from '../../core/findings/nextTests/testList.ts';
import { keptTogether } from '../words/numbers.ts';

/** What has to be fixed or shown before a finding may be given, each with the test that removes it. */
export function Blockers({ blockers }: { readonly blockers: readonly Blocker[] }) {
  if (blockers.length === 0) return null;
  return (
    <section className="reportPart blockers">
      <h3>What stands in the way</h3>
      <ul>
        {[...byTest(blockers)].map(([testId, standing]) => (
          <li key={testId}>
            {standing.map(({ id, words }) => (
              <p key={id} data-blocker={id}>
                {keptTogether(words)}
              </p>
            ))}
            <p className="soft">{TEST_LIST.find(({ id }) => id === testId)?.words}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Blockers that the same test removes stand together, with the test said once. */
function byTest(blockers: readonly Blocker[]): ReadonlyMap<string, readonly Blocker[]> {
  const groups = new Map<string, Blocker[]>();
  for (const blocker of blockers) groups.set(blocker.removedBy, [...(groups.get(blocker.removedBy) ?? []), blocker]);
  return groups;
}
