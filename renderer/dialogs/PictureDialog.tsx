import { Copy, Download } from 'lucide-react';
import { useEffect, useState } from 'react';
import type { Problem } from '../../core/reading/problem.ts';
import { fileName, tellExported } from '../actions/exportSheet.ts';
import { makePicture, pngOf } from '../actions/makePicture.ts';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { Button } from '../widgets/Button.tsx';
import { Dialog } from '../widgets/Dialog.tsx';
import { SelectField } from '../widgets/SelectField.tsx';
import { Problems } from '../workspace/Problems.tsx';
import type { DialogProps } from './dialogProps.ts';

type Scale = '1' | '2' | '4';

/** The visible traces as a picture: always light, with title, axes, units, legend, file, hash and day. */
export function PictureDialog({ onClose }: DialogProps) {
  const program = useProgram();
  const [svg, setSvg] = useState<string | null>(null);
  const [scale, setScale] = useState<Scale>('2');
  const [drawn, setDrawn] = useState(false);
  useEffect(() => {
    void makePicture(program)
      .then(setSvg)
      .finally(() => setDrawn(true));
  }, [program]);
  const reason = svg !== null ? null : drawn ? 'Nothing is drawn: unfold a pane first.' : 'The picture is being drawn.';
  const address = useObjectAddress(svg);
  const name = `Traces of ${recordOf(program.record.getState())?.identity.name ?? 'a vehicle'}`;

  /** A size that this computer cannot draw is told where it was chosen. */
  const drawnPng = async (whole: string) =>
    pngOf(whole, Number(scale)).catch(() => {
      program.notices.getState().tell('export', notDrawn(name));
      return null;
    });
  const write = async (kind: 'svg' | 'png'): Promise<void> => {
    if (svg === null) return;
    const content = kind === 'svg' ? svg : await drawnPng(svg);
    if (content === null) return;
    tellExported(program, await program.shell.exportFile({ suggestedName: fileName(name, kind), kind, content }));
  };
  const copy = async (): Promise<void> => {
    if (svg === null) return;
    const png = await drawnPng(svg);
    if (png === null) return;
    await program.shell.copyPicture({ png });
    program.notices.getState().say('The picture is on the clipboard.');
  };

  return (
    <Dialog
      title="Picture of the traces"
      lead="What is seen now. Always light, for paper."
      width="page"
      onClose={onClose}
      foot={
        <>
          <Button look="outline" icon={Copy} reason={reason} onPress={() => void copy()}>
            Copy
          </Button>
          <Button look="outline" icon={Download} reason={reason} onPress={() => void write('svg')}>
            SVG
          </Button>
          <Button look="main" icon={Download} reason={reason} onPress={() => void write('png')}>
            PNG
          </Button>
        </>
      }
    >
      <SelectField
        label="Size of the PNG"
        className="short"
        value={scale}
        choices={[
          { value: '1', words: '1200 px wide' },
          { value: '2', words: '2400 px wide' },
          { value: '4', words: '4800 px wide' },
        ]}
        onValue={(value) => setScale(value)}
      />
      <Problems places={['export']} />
      {address !== null && <img className="picturePreview" src={address} alt={name} />}
    </Dialog>
  );
}

const notDrawn = (where: string): Problem => ({
  id: 'notDrawn',
  what: 'The PNG could not be drawn at this size.',
  where,
  doNext: 'Choose a smaller size, or write the SVG, which has none.',
});

/** An address under which the page can show a document, as long as it is shown. */
function useObjectAddress(svg: string | null): string | null {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    if (svg === null) return;
    const made = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [svg]);
  return address;
}
