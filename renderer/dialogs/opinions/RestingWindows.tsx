import { windowsInOrder } from '../../../core/record/inOrder.ts';
import type { VehicleRecord } from '../../../core/record/schema.ts';
import { windowName } from '../../state/selectors/windowNames.ts';
import { CheckField } from '../../widgets/CheckField.tsx';
import { stretchWords } from '../../words/captureTimes.ts';

interface RestingWindowsProps {
  readonly record: VehicleRecord;
  readonly without: readonly string[];
  onWithout(without: readonly string[]): void;
}

/** The windows that an opinion rests on: every marked one unless it is unticked. */
export function RestingWindows({ record, without, onWithout }: RestingWindowsProps) {
  const windows = windowsInOrder(record);
  return (
    <fieldset className="restingChoice">
      <legend>It rests on</legend>
      {windows.length === 0 && <p className="soft">No window is marked: the opinion rests on none.</p>}
      {windows.map((window) => (
        <CheckField
          key={window.id}
          label={`${windowName(window)}, ${stretchWords(window, record.captures[window.captureId]?.durationS)}, ${record.captures[window.captureId]?.name ?? ''}`}
          checked={!without.includes(window.id)}
          onChecked={(checked) => {
            const others = without.filter((id) => id !== window.id);
            onWithout(checked ? others : [...others, window.id]);
          }}
        />
      ))}
    </fieldset>
  );
}
