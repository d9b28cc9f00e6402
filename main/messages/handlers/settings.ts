import { nativeTheme } from 'electron';
import type { Handlers } from '../receive.ts';
import type { ShellTools } from './tools.ts';

const MOST_CHOICES = 500;

type Names = 'settings' | 'saveSettings' | 'columnChoice' | 'rememberColumnChoice';

/** What a person chose once and is not asked again. */
export function settingsHandlers({ settings, columnChoices }: ShellTools): Pick<Handlers, Names> {
  return {
    settings: () => settings.read(),
    async saveSettings(wanted) {
      nativeTheme.themeSource = wanted.theme;
      await settings.write(wanted).catch(() => {}); // holds for this run even where the disk refuses it
      return null;
    },
    async columnChoice({ headerKey }) {
      const choices = await columnChoices.read();
      return choices.find((choice) => choice.headerKey === headerKey) ?? null;
    },
    async rememberColumnChoice(choice) {
      const add = (choices: readonly (typeof choice)[]) => [
        ...choices.filter((other) => other.headerKey !== choice.headerKey),
        choice,
      ];
      await columnChoices.change((choices) => add(choices).slice(-MOST_CHOICES)).catch(() => {});
      return null;
    },
  };
}
