import { COMMANDS, type CommandEntry } from '../../core/bridge/commandList.ts';
import { keysOf } from '../commands/keyMap.ts';
import { useProgram } from '../program/programContext.ts';
import { Dialog } from '../widgets/Dialog.tsx';
import type { DialogProps } from './dialogProps.ts';

const MENUS: readonly { id: CommandEntry['menu']; words: string }[] = [
  { id: 'file', words: 'File' },
  { id: 'edit', words: 'Edit' },
  { id: 'view', words: 'View' },
  { id: 'vehicle', words: 'Vehicle' },
  { id: 'window', words: 'Window' },
  { id: 'help', words: 'Help' },
];

/** What the traces themselves do with keys, wheel and pointer. */
const ON_TRACES: readonly (readonly [string, string])[] = [
  ['← →', 'Cursor by one sample or pixel; with Shift by ten; with Ctrl to the next switch, window or note'],
  ['Page up, Page down', 'One screen back or on'],
  ['Wheel', 'Zoom at the pointer; with Shift along; with Alt the height of the values'],
  ['Middle button, or Space and drag', 'Move the traces'],
  ['Escape', 'Leaves a drag and puts everything back'],
];

/** Every key, from the list of commands. */
export function KeysDialog({ onClose }: DialogProps) {
  const mac = useProgram().shell.platform === 'darwin';
  return (
    <Dialog
      title="Keys"
      lead="Single letters act while the traces have the focus; settings can turn them off."
      width="page"
      onClose={onClose}
    >
      <div className="keysPage">
        {MENUS.map((menu) => (
          <section key={menu.id}>
            <h3>{menu.words}</h3>
            <KeyTable
              rows={COMMANDS.filter((command) => command.menu === menu.id && command.key !== null).map((command) => [
                keysOf(command, mac).join(' or '),
                command.words.replace(/…$/, ''),
              ])}
            />
          </section>
        ))}
        <section>
          <h3>On the traces</h3>
          <KeyTable rows={ON_TRACES} />
        </section>
      </div>
    </Dialog>
  );
}

function KeyTable({ rows }: { readonly rows: readonly (readonly [string, string])[] }) {
  return (
    <table className="plainTable">
      <thead className="unseen">
        <tr>
          <th scope="col">Does</th>
          <th scope="col">Key</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(([keys, words]) => (
          <tr key={words}>
            <td>{words}</td>
            <td className="keyCell">
              <kbd>{keys}</kbd>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
