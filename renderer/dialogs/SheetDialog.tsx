import { Download, FolderOpen, Printer } from 'lucide-react';
import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import type { Sheet } from '../../core/evidence/sheet.ts';
import { type Included, NOTHING_PRIVATE } from '../../core/evidence/sheetInput.ts';
import { exportSheet, htmlOf, printSheet, type SheetKind } from '../actions/exportSheet.ts';
import { makeSheet } from '../actions/makeSheet.ts';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { Button } from '../widgets/Button.tsx';
import { CheckField } from '../widgets/CheckField.tsx';
import { Dialog } from '../widgets/Dialog.tsx';
import { Problems } from '../workspace/Problems.tsx';
import type { DialogProps } from './dialogProps.ts';
import { PrivateChoices } from './PrivateChoices.tsx';
import { SheetPreview } from './SheetPreview.tsx';

const KINDS: readonly { kind: SheetKind; words: string }[] = [
  { kind: 'html', words: 'HTML' },
  { kind: 'pdf', words: 'PDF' },
  { kind: 'csv', words: 'CSV' },
  { kind: 'json', words: 'JSON' },
  { kind: 'md', words: 'Markdown' },
];

/** The sheet as it will be handed over, before it is. Private fields stay out unless they are ticked in. */
export function SheetDialog({ onClose }: DialogProps) {
  const program = useProgram();
  const [include, setInclude] = useState<Included>(NOTHING_PRIVATE);
  const signed = useStore(program.record, (state) => Object.keys(recordOf(state)?.opinions ?? {}).length > 0);
  const [shown, setShown] = useState<{ readonly sheet: Sheet | null; readonly include: Included } | null>(null);
  const sheet = shown?.sheet ?? null;
  const scoring = useStore(program.score, (state) => state.pending);
  const [exported, setExported] = useState(false);

  useEffect(() => {
    let latest = true;
    void makeSheet(program, include).then((made) => latest && setShown({ sheet: made, include }));
    return () => {
      latest = false;
    };
  }, [program, include]);

  /** With what is ticked now: a preview that still shows what was ticked before is not handed over. */
  const asTicked = async (): Promise<Sheet | null> =>
    shown?.include === include && shown.sheet !== null ? shown.sheet : makeSheet(program, include);
  const write = async (kind: SheetKind): Promise<void> => {
    const made = await asTicked();
    if (made === null) return; // why there is no finding to put on it is told on the page
    if (await exportSheet(program, made, kind)) setExported(true);
  };
  const print = async (): Promise<void> => {
    const made = await asTicked();
    if (made !== null) await printSheet(program, made);
  };

  return (
    <Dialog
      title="Evidence sheet"
      lead="This is what the other person gets. Nothing leaves this computer until you choose a kind below."
      width="page"
      onClose={onClose}
      foot={
        <>
          {exported && (
            <Button look="quiet" icon={FolderOpen} className="push" onPress={() => void program.shell.showExport(null)}>
              Show in its folder
            </Button>
          )}
          <Button look="outline" icon={Printer} onPress={() => void print()}>
            Print
          </Button>
          {KINDS.map(({ kind, words }) => (
            <Button
              key={kind}
              look={kind === 'pdf' ? 'main' : 'outline'}
              icon={Download}
              label={`${words}: write the sheet`}
              onPress={() => void write(kind)}
            >
              {words}
            </Button>
          ))}
        </>
      }
    >
      <div className="sheetPage">
        <fieldset className="sheetChoices">
          <legend>Put in, too</legend>
          <PrivateChoices include={include} onInclude={setInclude} />
          {signed && (
            <CheckField
              label="Names under signed opinions"
              checked={include.signers}
              onChecked={(signers) => setInclude({ ...include, signers })}
            />
          )}
          <p className="soft">What is not ticked is left out, and the sheet says that it was.</p>
          <Problems places={['export', 'score']} />
        </fieldset>
        {sheet === null ? (
          <p>{whyNoSheet(scoring, shown === null)}</p>
        ) : (
          <SheetPreview html={htmlOf(sheet)} title={sheet.title} />
        )}
      </div>
    </Dialog>
  );
}

function whyNoSheet(scoring: boolean, underWay: boolean): string {
  if (scoring) return 'The vehicle is still being scored.';
  return underWay ? 'The sheet is being made.' : 'There is no finding, and so no sheet to hand over.';
}
