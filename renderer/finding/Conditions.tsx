import type { ConditionResult } from '../../core/conditions/condition.ts';
import { conditionWords } from '../../core/evidence/words/terms.ts';
import { ConditionSign } from '../widgets/Sign.tsx';
import { keptTogether } from '../words/numbers.ts';

/** What the window has to meet to be judged: a sign and a word for met, not met and not recorded, with the numbers. */
export function Conditions({ conditions }: { readonly conditions: readonly ConditionResult[] }) {
  const inOrder = [...conditions].sort((a, b) => rank(a.met) - rank(b.met));
  return (
    <section className="reportPart">
      <h3>Conditions</h3>
      <ul className="conditions">
        {inOrder.map(({ id, met, detail }) => (
          <li key={id} data-condition={id} data-met={String(met)}>
            <ConditionSign met={met} />
            <div>
              <p>
                {conditionWords(id)}: <strong>{metWord(met)}</strong>
              </p>
              <p className="soft">{keptTogether(detail)}</p>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Not met first, then what was not recorded: that is what has to be looked at. */
function rank(met: boolean | null): number {
  return met === false ? 0 : met === null ? 1 : 2;
}

function metWord(met: boolean | null): string {
  if (met === null) return 'not recorded';
  return met ? 'met' : 'not met';
}
