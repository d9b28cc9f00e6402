import { CONDITIONS } from '../../core/conditions/index.ts';
import { MEASURES } from '../../core/measures/index.ts';
import { Dialog } from '../widgets/Dialog.tsx';
import type { DialogProps } from './dialogProps.ts';

/** What each measure and condition tells, and where its limits are. */
export function MeasuresDialog({ onClose }: DialogProps) {
  return (
    <Dialog
      title="What the measures mean"
      lead="Every measure carries a 95 % interval. One that its data cannot support is left out with a reason, never guessed."
      width="wide"
      onClose={onClose}
    >
      <h3>Measures</h3>
      <dl className="glossary">
        {MEASURES.map(({ id, words, unit, help, needs }) => (
          <div key={id}>
            <dt>
              {words}
              {unit === '1' ? '' : `, ${unit}`}
            </dt>
            <dd>{help}</dd>
            <dd className="soft">Needs: {needs}</dd>
          </div>
        ))}
      </dl>
      <h3>Conditions</h3>
      <dl className="glossary">
        {CONDITIONS.map(({ id, words, help }) => (
          <div key={id}>
            <dt>{words}</dt>
            <dd>{help}</dd>
          </div>
        ))}
      </dl>
      <h3>Findings</h3>
      <dl className="glossary">
        <div>
          <dt>Stores oxygen, stores weakly, does not store oxygen</dt>
          <dd>What the converter did in this stretch, with a probability that is calibrated on simulated drives.</dd>
        </div>
        <div>
          <dt>Cannot tell yet</dt>
          <dd>Something stands in the way. It is named, with the test that removes it.</dd>
        </div>
        <div>
          <dt>Met, not met, not recorded</dt>
          <dd>A condition that was not recorded is neither met nor broken: the capture does not hold what it takes.</dd>
        </div>
      </dl>
    </Dialog>
  );
}
