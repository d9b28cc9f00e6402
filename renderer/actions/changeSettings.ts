import type { Settings } from '../../core/bridge/shellMessages.ts';
import type { Program } from '../program/program.ts';

/** Changes some settings, at once and for every vehicle, and keeps them. */
export async function changeSettings({ settings, shell }: Program, change: Partial<Settings>): Promise<void> {
  const next = { ...settings.getState().settings, ...change };
  settings.setState({ settings: next });
  await shell.saveSettings(next);
}
