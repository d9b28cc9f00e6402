import type { Blocker } from '../../core/findings/finding.ts';
import { TEST_LIST } from '../../core/findings/nextTests/testList.ts';

/** What has to be fixed or shown before a finding may be given, each with the test that removes it. */
export function Blockers({ blockers }: { readonly blockers: readonly Blocker[] }) {
  if (blockers.length === 0) return null;
  return (
    <section className="reportPart blockers">
      <h3>What stands in the way</h3>
      <ul>
        {blockers.map((blocker) => {
          const test = TEST_LIST.find(({ id }) => id === blocker.removedBy);
          return (
            <li key={blocker.id} data-blocker={blocker.id}>
              <p>{blocker.words}</p>
              {test !== undefined && <p className="soft">Removed by: {test.words}</p>}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
