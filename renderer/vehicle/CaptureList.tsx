import { Plus, Search, Trash2 } from 'lucide-react';
import { useStore } from 'zustand';
import { CAPTURE_KIND_WORDS } from '../../core/evidence/words/terms.ts';
import { capturesInOrder } from '../../core/record/inOrder.ts';
import type { CaptureRef, VehicleRecord } from '../../core/record/schema.ts';
import { locateCapture } from '../actions/findCaptures.ts';
import { goToCapture } from '../actions/jump.ts';
import { removeCapture } from '../actions/removeCapture.ts';
import { CommandButton } from '../commands/CommandButton.tsx';
import { useProgram } from '../program/programContext.ts';
import type { MissingCapture } from '../state/captureStore.ts';
import { IconButton } from '../widgets/Button.tsx';
import { durationWords } from '../words/times.ts';
import { ListPart, Row } from './Row.tsx';

const MISSING_WORDS: Readonly<Record<MissingCapture['why'], string>> = {
  notFound: 'File not found',
  changed: 'File has changed',
  unread: 'File could not be read',
};

/** The recorded files of the vehicle. */
export function CaptureList({ record }: { readonly record: VehicleRecord }) {
  const captures = capturesInOrder(record);
  return (
    <ListPart
      title="Captures"
      add={<CommandButton id="file.open" icon={Plus} signOnly />}
      empty={captures.length === 0 ? 'The recorded files of this vehicle.' : null}
    >
      {captures.map((capture) => (
        <CaptureRow key={capture.id} capture={capture} />
      ))}
    </ListPart>
  );
}

function CaptureRow({ capture }: { readonly capture: CaptureRef }) {
  const program = useProgram();
  const shown = useStore(program.workspace, (state) => state.captureId === capture.id);
  const missing = useStore(program.captures, (state) => state.missing[capture.id]);
  const facts = `${CAPTURE_KIND_WORDS[capture.kind]}, ${durationWords(capture.durationS)}`;
  return (
    <Row
      chosen={shown}
      first={capture.name}
      second={
        <>
          {missing === undefined ? facts : MISSING_WORDS[missing.why]}
          {capture.sample && (
            <>
              {' '}
              <span className="inventedMark">invented</span>
            </>
          )}
        </>
      }
      onChoose={() => goToCapture(program, capture.id)}
    >
      {missing !== undefined && (
        <IconButton
          icon={Search}
          label={`Say where ${capture.name} is`}
          onPress={() => void locateCapture(program, capture.id)}
        />
      )}
      <IconButton
        icon={Trash2}
        label={`Take ${capture.name} off the vehicle`}
        onPress={() => removeCapture(program, capture.id)}
      />
    </Row>
  );
}
