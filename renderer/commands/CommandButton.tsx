import type { LucideIcon } from 'lucide-react';
import { COMMANDS } from '../../core/bridge/commandList.ts';
import { useProgram } from '../program/programContext.ts';
import { Button } from '../widgets/Button.tsx';
import { keysOf } from './keyMap.ts';
import { runCommand } from './runCommand.ts';
import { useCommandState } from './useCommandState.ts';

interface CommandButtonProps {
  readonly id: string;
  readonly icon?: LucideIcon;
  readonly look?: 'main' | 'outline' | 'quiet';
  /** Shorter words than the menu's, where the place says the rest. The menu's words stay its tip. */
  readonly words?: string;
  /** Only the icon is seen; the words are its name. */
  readonly signOnly?: boolean;
  readonly className?: string;
}

/** A command of the list as a button: its words, its key as a tip, and why it cannot run now. */
export function CommandButton({ id, icon, look = 'quiet', words, signOnly = false, className }: CommandButtonProps) {
  const program = useProgram();
  const state = useCommandState(id);
  const entry = COMMANDS.find((command) => command.id === id);
  if (entry === undefined) throw new Error(`There is no command ${id}.`);
  const full = state.words ?? entry.words;
  const keys = keysOf(entry, program.shell.platform === 'darwin');
  const shown = words ?? full.replace(/…$/, '');
  const tip = [shown === full.replace(/…$/, '') && !signOnly ? '' : full.replace(/…$/, ''), keys.join(' or ')]
    .filter(Boolean)
    .join(', ');
  return (
    <Button
      look={look}
      command={id}
      {...(icon === undefined ? {} : { icon })}
      className={[signOnly ? 'sign' : '', className ?? ''].join(' ').trim()}
      reason={state.reason}
      tip={tip === '' ? null : tip}
      {...(entry.tick === true ? { pressed: state.checked } : {})}
      {...(signOnly ? { label: full.replace(/…$/, '') } : {})}
      onPress={() => runCommand(program, id)}
    >
      {signOnly ? null : shown}
    </Button>
  );
}
