import { themeOf } from '../state/settingsStore.ts';
import type { Program } from './program.ts';

/** Dresses the page in the theme of the settings, or of the system where the settings leave it to that. */
export function followTheme({ settings }: Pick<Program, 'settings'>, page: Window): void {
  const dark = page.matchMedia('(prefers-color-scheme: dark)');
  const dress = (): void => {
    page.document.documentElement.dataset.theme = themeOf(settings.getState());
  };
  dark.addEventListener('change', () => settings.setState({ systemDark: dark.matches }));
  settings.subscribe(dress);
  settings.setState({ systemDark: dark.matches });
}
