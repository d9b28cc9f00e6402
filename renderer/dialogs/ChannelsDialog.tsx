import { useStore } from 'zustand';
import { roleWords } from '../../core/evidence/words/terms.ts';
import { useProgram } from '../program/programContext.ts';
import { Button } from '../widgets/Button.tsx';
import { CheckField } from '../widgets/CheckField.tsx';
import { Dialog } from '../widgets/Dialog.tsx';
import { withChannel } from '../workspace/firstPanes.ts';
import type { DialogProps } from './dialogProps.ts';

/** Which channels of the shown capture have a pane. */
export function ChannelsDialog({ onClose }: DialogProps) {
  const { workspace, captures } = useProgram();
  const captureId = useStore(workspace, (state) => state.captureId);
  const summary = useStore(captures, (state) => state.held[captureId ?? '']?.summary);
  const panes = useStore(workspace, (state) => state.captures[captureId ?? '']?.panes);
  if (summary === undefined || panes === undefined) return null;
  const shown = new Set(panes.flatMap((pane) => pane.channelIds));
  return (
    <Dialog
      title="Channels"
      lead={`What ${summary.name} holds. Each ticked channel has a place among the traces.`}
      onClose={onClose}
      foot={
        <Button look="main" onPress={onClose}>
          Done
        </Button>
      }
    >
      {summary.channels.map((channel) => (
        <CheckField
          key={channel.id}
          label={`${channel.name}${channel.unit === '1' ? '' : `, ${channel.unit}`}`}
          hint={roleWords(channel.role, channel.bank)}
          checked={shown.has(channel.id)}
          onChecked={(checked) => workspace.getState().panes(withChannel(panes, channel, checked))}
        />
      ))}
    </Dialog>
  );
}
