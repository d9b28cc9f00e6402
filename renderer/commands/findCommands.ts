import { COMMANDS, type CommandEntry } from '../../core/bridge/commandList.ts';

/**
 * Commands that fit what was typed, best first: words that begin with it, then other words of the trade, then any
 * place in the words. Every typed word must fit somewhere. Nothing typed gives all, in the order of the menus.
 */
export function findCommands(typed: string): readonly CommandEntry[] {
  const wanted = typed.toLowerCase().split(/\s+/).filter(Boolean);
  if (wanted.length === 0) return COMMANDS;
  return COMMANDS.map((command, index) => ({ command, index, fit: fitOf(command, wanted) }))
    .filter(({ fit }) => fit > 0)
    .sort((a, b) => b.fit - a.fit || a.index - b.index)
    .map(({ command }) => command);
}

function fitOf(command: CommandEntry, wanted: readonly string[]): number {
  const own = command.words.toLowerCase().split(/[^a-z0-9.]+/);
  const other = command.alsoCalled.map((word) => word.toLowerCase());
  let sum = 0;
  for (const word of wanted) {
    const fit = wordFit(word, own, other);
    if (fit === 0) return 0;
    sum += fit;
  }
  return sum;
}

function wordFit(word: string, own: readonly string[], other: readonly string[]): number {
  if (own.includes(word)) return 6;
  if (other.includes(word)) return 5;
  if (own.some((one) => one.startsWith(word))) return 4;
  if (other.some((one) => one.startsWith(word))) return 3;
  return own.some((one) => one.includes(word)) ? 1 : 0;
}
