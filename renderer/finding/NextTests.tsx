import type { NextTest } from '../../core/findings/finding.ts';
import { KEPT_SPACE } from '../words/numbers.ts';
import { TestCautions } from './TestCautions.tsx';

const SHOWN = 3;

/** The first three tests worth making next, and why. Cautions stand with the tests that touch hot or moving parts. */
export function NextTests({ tests }: { readonly tests: readonly NextTest[] }) {
  const first = tests.slice(0, SHOWN);
  return (
    <section className="reportPart">
      <h3>Next test</h3>
      {first.length === 0 ? (
        <p className="soft">No further test is worth its minutes.</p>
      ) : (
        <ol className="nextTests">
          {first.map((test) => (
            <li key={test.id} data-test={test.id}>
              <p>
                {test.words}{' '}
                <span className="soft">
                  about {test.minutes}
                  {KEPT_SPACE}min
                </span>
              </p>
              <p className="soft">{test.why}</p>
            </li>
          ))}
        </ol>
      )}
      <TestCautions tests={first} />
    </section>
  );
}
