import { useState } from 'react';
import { useStore } from 'zustand';
import { FINDING_WORDS } from '../../core/evidence/words/terms.ts';
import { withdrawOpinion } from '../actions/opinions.ts';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { Button } from '../widgets/Button.tsx';
import { Dialog } from '../widgets/Dialog.tsx';
import { TextField } from '../widgets/TextField.tsx';
import { instantWords } from '../words/times.ts';
import type { DialogProps } from './dialogProps.ts';
import { Signature } from './opinions/Signature.tsx';

/** Takes an opinion back in the open: it stays to be read, with the reason beside it. */
export function WithdrawDialog({ opinionId, onClose }: DialogProps & { readonly opinionId: string }) {
  const program = useProgram();
  const opinion = useStore(program.record, (state) => recordOf(state)?.opinions[opinionId]);
  const { reader, licence } = useStore(program.settings, (state) => state.settings);
  const [author, setAuthor] = useState({ name: reader, licence });
  const [reason, setReason] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const [withdrawing, setWithdrawing] = useState(false);
  if (opinion?.kind !== 'opinion') return null;

  const back = (): void => program.dialogs.getState().show({ kind: 'opinions', opinionId });
  const withdraw = async (): Promise<void> => {
    const missing = whatIsMissing(reason, author.name);
    setProblem(missing);
    if (missing !== null) return;
    setWithdrawing(true); // what is signed twice stays so
    await withdrawOpinion(program, { withdraws: opinionId, author, reason });
    back();
  };

  return (
    <Dialog
      title="Withdraw an opinion"
      lead={`${opinion.author.name}, ${instantWords(opinion.signedAt)}: ${FINDING_WORDS[opinion.finding].toLowerCase()}. It stays to be read, marked as withdrawn; this too is signed and cannot be undone.`}
      onClose={onClose}
      foot={
        <>
          <Button look="quiet" onPress={back}>
            Let it stand
          </Button>
          <Button look="main" reason={withdrawing ? 'It is being withdrawn.' : null} onPress={() => void withdraw()}>
            Withdraw
          </Button>
        </>
      }
    >
      <TextField label="Why" value={reason} rows={3} maxLength={20_000} autoFocus onValue={setReason} />
      <Signature author={author} onAuthor={setAuthor} />
      {problem !== null && (
        <p className="fieldProblem" role="alert">
          {problem}
        </p>
      )}
    </Dialog>
  );
}

function whatIsMissing(reason: string, name: string): string | null {
  if (reason.trim() === '') return 'Say why it is withdrawn.';
  return name.trim() === '' ? 'Type your name: a withdrawal is signed by somebody.' : null;
}
