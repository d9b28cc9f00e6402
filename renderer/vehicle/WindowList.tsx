import { Check, CheckCheck, ChevronDown, ChevronUp, Pencil, Trash2 } from 'lucide-react';
import { useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { bankWords, FINDING_WORDS } from '../../core/evidence/words/terms.ts';
import { windowsInOrder } from '../../core/record/inOrder.ts';
import type { RecordWindow, VehicleRecord } from '../../core/record/schema.ts';
import { startSentence } from '../../core/words/numbers.ts';
import { goToOffer, goToWindow } from '../actions/jump.ts';
import { acceptOffer, deleteWindow } from '../actions/windows.ts';
import { CommandButton } from '../commands/CommandButton.tsx';
import { useProgram } from '../program/programContext.ts';
import { gravest, windowScoresOf } from '../state/scoreStore.ts';
import { type Offer, offerName, openOffers } from '../state/selectors/offers.ts';
import { windowName } from '../state/selectors/windowNames.ts';
import { Button, IconButton } from '../widgets/Button.tsx';
import { FindingSign } from '../widgets/Sign.tsx';
import { stretchWords } from '../words/captureTimes.ts';
import { countWords } from '../words/numbers.ts';
import { ListPart, Row } from './Row.tsx';

/** The windows of the vehicle, and the offers of the core for the capture that is shown. */
export function WindowList({ record }: { readonly record: VehicleRecord }) {
  const program = useProgram();
  const captureId = useStore(program.workspace, (state) => state.captureId);
  const held = useStore(program.captures, (state) => (captureId === null ? undefined : state.held[captureId]));
  const offers = useMemo(() => openOffers(held, record), [held, record]);
  const windows = windowsInOrder(record);
  return (
    <ListPart
      title="Windows"
      empty={windows.length + offers.length === 0 ? 'Drag over the traces to mark a stretch that is judged.' : null}
    >
      {windows.map((window) => (
        <WindowRow key={window.id} window={window} record={record} />
      ))}
      <OfferRows offers={offers} captureS={held?.summary.durationS} />
    </ListPart>
  );
}

function WindowRow({ window, record }: { readonly window: RecordWindow; readonly record: VehicleRecord }) {
  const program = useProgram();
  const chosen = useStore(
    program.workspace,
    ({ selected }) => selected?.kind === 'window' && selected.id === window.id,
  );
  const score = useStore(program.score, (state) => state.score);
  const scores = windowScoresOf(score, window.id);
  const finding = gravest(scores);
  const name = windowName(window);
  const many = Object.keys(record.captures).length > 1;
  const capture = record.captures[window.captureId];
  const where = many ? `${capture?.name ?? ''}, ` : '';
  const bank = window.bank === null ? '' : `, ${bankWords(window.bank)}`;
  return (
    <Row
      chosen={chosen}
      sign={finding === null ? undefined : <FindingSign finding={finding} />}
      first={name}
      second={
        <>
          {scores.map((one) => (
            <span key={one.bank} className="rowFinding">
              {scores.length > 1 && `${startSentence(bankWords(one.bank))}: `}
              {scores.length > 1 ? FINDING_WORDS[one.finding].toLowerCase() : FINDING_WORDS[one.finding]}
            </span>
          ))}
          {`${where}${stretchWords(window, capture?.durationS)}${bank}`}
        </>
      }
      onChoose={() => goToWindow(program, window.id)}
    >
      <IconButton
        icon={Pencil}
        label={`Exact times and name of ${name}`}
        onPress={() => program.dialogs.getState().show({ kind: 'windowTimes', windowId: window.id })}
      />
      <IconButton icon={Trash2} label={`Delete ${name}`} onPress={() => deleteWindow(program, window.id)} />
    </Row>
  );
}

/** Offers shown before one asks for all of them. */
const FIRST_OFFERS = 4;

interface OfferRowsProps {
  readonly offers: readonly Offer[];
  /** Length of the capture they lie in, s. */
  readonly captureS: number | undefined;
}

/** The offers that tell most first: holds, then cruises and idles; the rest on demand. */
function OfferRows({ offers, captureS }: OfferRowsProps) {
  const [all, setAll] = useState(false);
  const inOrder = [...offers].sort((a, b) => OFFER_RANK[a.window.kind] - OFFER_RANK[b.window.kind]);
  const more = offers.length - FIRST_OFFERS;
  const shown = all ? inOrder : inOrder.slice(0, FIRST_OFFERS);
  return (
    <>
      {shown.map((offer) => (
        <OfferRow key={offer.id} offer={offer} captureS={captureS} />
      ))}
      {offers.length > 1 && (
        <li className="listMore">
          {more > 0 && (
            <Button look="quiet" icon={all ? ChevronUp : ChevronDown} onPress={() => setAll(!all)}>
              {all ? 'Fewer offers' : countWords(more, 'more offer')}
            </Button>
          )}
          <CommandButton id="window.acceptAll" icon={CheckCheck} words="Accept all offers" />
        </li>
      )}
    </>
  );
}

const OFFER_RANK = { hold: 0, cruise: 1, idle: 2, fuelCut: 3, snap: 4, mixed: 5 } as const;

function OfferRow({ offer, captureS }: { readonly offer: Offer; readonly captureS: number | undefined }) {
  const program = useProgram();
  const chosen = useStore(program.workspace, ({ selected }) => selected?.kind === 'offer' && selected.id === offer.id);
  const { window, id, captureId } = offer;
  const name = offerName(window);
  const stretch = stretchWords(window, captureS);
  return (
    <Row
      chosen={chosen}
      outlined
      first={`Offer: ${name}`}
      second={stretch}
      onChoose={() => goToOffer(program, id, captureId, window)}
    >
      <IconButton icon={Check} label={`Accept ${name}, ${stretch}`} onPress={() => acceptOffer(program, id)} />
    </Row>
  );
}
