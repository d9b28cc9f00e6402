import { useStore } from 'zustand';
import { bankWords } from '../../core/evidence/words/terms.ts';
import type { BankVerdict, Verdict } from '../../core/findings/finding.ts';
import { useProgram } from '../program/programContext.ts';
import { readsBlind } from '../state/recordStore.ts';
import { ProblemNote } from '../widgets/ProblemNote.tsx';
import { Blockers } from './Blockers.tsx';
import { HiddenFinding } from './HiddenFinding.tsx';
import { NextTests } from './NextTests.tsx';
import { OtherCore } from './OtherCore.tsx';
import { Reasons } from './Reasons.tsx';
import { Result } from './Result.tsx';
import { ThermalTable } from './ThermalTable.tsx';
import { useOfferedInstead } from './useOfferedInstead.ts';

/** The vehicle's verdict over all its windows, banks and temperature readings; before and after the repair. */
export function VehicleReport() {
  const program = useProgram();
  const score = useStore(program.score, (state) => state.score);
  const problem = useStore(program.score, (state) => state.problem);
  const offered = useOfferedInstead();
  const blind = useStore(program.record, readsBlind);
  if (blind) {
    return (
      <div className="report">
        <h2>Vehicle</h2>
        <HiddenFinding />
      </div>
    );
  }
  if (score === null) {
    return (
      <div className="report">
        <h2>Vehicle</h2>
        {problem === null ? <p className="soft">Nothing has been scored yet.</p> : <ProblemNote problem={problem} />}
      </div>
    );
  }
  const { before, after } = score;
  return (
    <div className="report">
      <OtherCore findingId="vehicle" />
      {offered !== null && <p>{offered}</p>}
      {after !== null && <Verdicts title="After the repair" verdict={after.verdict} banks={after.banks} />}
      <Verdicts
        title={after === null ? 'Vehicle' : 'Before the repair'}
        verdict={before.verdict}
        banks={before.banks}
        folded={after !== null}
      />
      <ThermalTable readings={score.thermal} />
    </div>
  );
}

interface VerdictsProps {
  readonly title: string;
  readonly verdict: Verdict;
  readonly banks: readonly BankVerdict[];
  readonly folded?: boolean;
}

function Verdicts({ title, verdict, banks, folded = false }: VerdictsProps) {
  if (banks.length > 1 && !folded) {
    return (
      <>
        {banks.map((bank) => (
          <section key={bank.bank ?? 0} className="reportPart verdict">
            <h2>
              {title}, {bankWords(bank.bank)}
            </h2>
            <VerdictSheet verdict={bank} />
          </section>
        ))}
      </>
    );
  }
  return (
    <section className="reportPart verdict">
      <h2>{title}</h2>
      {folded ? <p>{verdict.sentence}</p> : <VerdictSheet verdict={banks[0] ?? verdict} />}
    </section>
  );
}

function VerdictSheet({ verdict }: { readonly verdict: Verdict }) {
  return (
    <>
      <Result finding={verdict.finding} probabilityNotStoring={verdict.probabilityNotStoring} />
      {verdict.embraces !== undefined && <p>{verdict.embraces}</p>}
      <Blockers blockers={verdict.blockers} />
      <Reasons reasons={verdict.reasons} finding={verdict.finding} />
      <NextTests tests={verdict.nextTests} />
    </>
  );
}
