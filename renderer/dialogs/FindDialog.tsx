import { type KeyboardEvent, useEffect, useId, useState } from 'react';
import type { CommandEntry } from '../../core/bridge/commandList.ts';
import { findCommands } from '../commands/findCommands.ts';
import { DEEDS } from '../commands/index.ts';
import { keysOf } from '../commands/keyMap.ts';
import { runCommand } from '../commands/runCommand.ts';
import { useProgram } from '../program/programContext.ts';
import { Dialog } from '../widgets/Dialog.tsx';
import type { DialogProps } from './dialogProps.ts';

/** Finds a command by a word of its name or of the trade; arrows choose, Enter runs it. */
export function FindDialog({ onClose }: DialogProps) {
  const program = useProgram();
  const list = useId();
  const [typed, setTyped] = useState('');
  const [at, setAt] = useState(0);
  const found = findCommands(typed);
  const chosen = found[Math.min(at, found.length - 1)];
  // The focus stays in the field, so nothing else brings the chosen command into sight.
  const chosenId = chosen === undefined ? null : `${list}-${chosen.id}`;
  useEffect(() => {
    if (chosenId !== null) document.getElementById(chosenId)?.scrollIntoView({ block: 'nearest' });
  }, [chosenId]);

  const run = (command: CommandEntry | undefined): void => {
    if (command === undefined) return;
    onClose();
    runCommand(program, command.id);
  };
  const move = (event: KeyboardEvent): void => {
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (event.key === 'Enter') run(chosen);
    if (step === 0 || found.length === 0) return;
    event.preventDefault();
    setAt((Math.min(at, found.length - 1) + step + found.length) % found.length);
  };

  return (
    <Dialog title="Find a command" onClose={onClose}>
      <input
        className="bareField"
        role="combobox"
        aria-label="Word of a command"
        aria-expanded="true"
        aria-controls={list}
        aria-activedescendant={chosenId ?? undefined}
        autoComplete="off"
        data-autofocus
        value={typed}
        onChange={(event) => {
          setTyped(event.target.value);
          setAt(0);
        }}
        onKeyDown={move}
      />
      {found.length === 0 && <p role="status">No command is called that. Try another word.</p>}
      <div role="listbox" id={list} aria-label="Commands" className="commandList">
        {found.map((command) => (
          <FoundCommand
            key={command.id}
            id={`${list}-${command.id}`}
            command={command}
            chosen={command === chosen}
            onRun={() => run(command)}
          />
        ))}
      </div>
    </Dialog>
  );
}

interface FoundCommandProps {
  readonly id: string;
  readonly command: CommandEntry;
  readonly chosen: boolean;
  onRun(): void;
}

function FoundCommand({ id, command, chosen, onRun }: FoundCommandProps) {
  const program = useProgram();
  const state = DEEDS.get(command.id)?.state(program);
  const keys = keysOf(command, program.shell.platform === 'darwin').join(' or ');
  return (
    <button
      id={id}
      type="button"
      role="option"
      tabIndex={-1}
      aria-selected={chosen}
      aria-disabled={state?.enabled === false || undefined}
      className={chosen ? 'chosen' : ''}
      onClick={onRun}
    >
      <span>
        {(state?.words ?? command.words).replace(/…$/, '')}
        {state?.reason != null && <span className="soft"> {state.reason}</span>}
      </span>
      <kbd>{keys}</kbd>
    </button>
  );
}
