import { Plus } from 'lucide-react';
import type { ReactNode } from 'react';
import { sureWords } from '../../core/evidence/words/opinions.ts';
import { FINDING_WORDS } from '../../core/evidence/words/terms.ts';
import { withdrawalOf } from '../../core/opinions/withdrawn.ts';
import type { Opinion, Withdrawal } from '../../core/record/opinionSchema.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import { CommandButton } from '../commands/CommandButton.tsx';
import { useProgram } from '../program/programContext.ts';
import { ChainSign } from '../widgets/ChainSign.tsx';
import { FindingSign } from '../widgets/Sign.tsx';
import { instantWords } from '../words/times.ts';
import { ListPart, Row } from './Row.tsx';
import { useCheckedOpinions } from './useCheckedOpinions.ts';

/** What readers signed on the vehicle, in the order in which they signed. */
export function OpinionList({ record }: { readonly record: VehicleRecord }) {
  const links = useCheckedOpinions(record) ?? [];
  const entries = links.map(({ entry }) => entry);
  const none = Object.keys(record.opinions).length === 0;
  return (
    <ListPart
      title="Opinions"
      add={<CommandButton id="vehicle.sign" icon={Plus} signOnly />}
      empty={none ? 'Findings that readers sign, each with its date and reasons.' : null}
    >
      {links.map(({ entry, state }) =>
        entry.kind === 'opinion' ? (
          <OpinionRow key={entry.id} opinion={entry} withdrawn={withdrawalOf(entries, entry.id)}>
            <ChainSign state={state} />
          </OpinionRow>
        ) : null,
      )}
    </ListPart>
  );
}

interface OpinionRowProps {
  readonly opinion: Opinion;
  readonly withdrawn: Withdrawal | null;
  readonly children: ReactNode;
}

function OpinionRow({ opinion, withdrawn, children }: OpinionRowProps) {
  const { dialogs } = useProgram();
  return (
    <Row
      chosen={false}
      sign={<FindingSign finding={opinion.finding} />}
      first={
        <>
          {withdrawn !== null && <strong>Withdrawn: </strong>}
          {FINDING_WORDS[opinion.finding]}
        </>
      }
      second={
        <>
          <span className="rowFinding">{sureWords(opinion)}</span>
          {`${opinion.author.name}, ${instantWords(opinion.signedAt)}`}
          {children}
        </>
      }
      onChoose={() => dialogs.getState().show({ kind: 'opinions', opinionId: opinion.id })}
    />
  );
}
