import { Check } from 'lucide-react';
import { useStore } from 'zustand';
import { bankWords, WINDOW_KIND_WORDS } from '../../core/evidence/words/terms.ts';
import { acceptOffer, offersOfShown } from '../actions/windows.ts';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { Button } from '../widgets/Button.tsx';
import { stretchWords } from '../words/captureTimes.ts';
import { ScoreSheets } from './ScoreSheet.tsx';

/** What an offer would say, read before it is accepted. It is no part of the record and of no verdict yet. */
export function OfferReport() {
  const program = useProgram();
  const selected = useStore(program.workspace, (state) => state.selected);
  const offered = useStore(program.score, (state) => state.offer);
  const record = useStore(program.record, recordOf);
  const offers = offersOfShown(program);
  const offer = offers.find((one) => one.id === selected?.id);
  if (offer === undefined) {
    const next = offers.length === 0 ? '' : ' Choose another in the list.';
    return <p className="report soft">This offer is no longer there.{next}</p>;
  }
  const { window } = offer;
  return (
    <div className="report">
      <div className="reportHead">
        <div>
          <h2>Offer: {WINDOW_KIND_WORDS[window.kind].toLowerCase()}</h2>
          <p className="soft">
            {stretchWords(window, record?.captures[offer.captureId]?.durationS)}, {bankWords(window.bank)}. It counts
            once you accept it.
          </p>
        </div>
      </div>
      <Button look="main" icon={Check} command="window.accept" onPress={() => acceptOffer(program, offer.id)}>
        Accept as a window
      </Button>
      {offered?.id === offer.id && offered.scores !== null && <ScoreSheets scores={offered.scores} />}
    </div>
  );
}
