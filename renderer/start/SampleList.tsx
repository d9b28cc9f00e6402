import { useStore } from 'zustand';
import { sampleStory, stemOf } from '../actions/sampleStories.ts';
import { useProgram } from '../program/programContext.ts';
import type { SampleDrive } from '../state/shelfStore.ts';

interface SampleListProps {
  onOpen(drive: SampleDrive): void;
}

/** The sample drives: what each shows, and that it is invented. */
export function SampleList({ onOpen }: SampleListProps) {
  const { shelf } = useProgram();
  const samples = useStore(shelf, (state) => state.samples);
  return (
    <ul className="shelfList samples">
      {samples.map((drive) => (
        <li key={drive.token}>
          <button type="button" data-sample={stemOf(drive.name)} onClick={() => onOpen(drive)}>
            <span className="titleLine">
              <span>{sampleStory(drive.name)?.title ?? drive.name}</span>
              <span className="soft">{drive.name}</span>
            </span>
            <span className="soft">{drive.words}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
