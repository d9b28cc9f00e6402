import { createStore, type StoreApi } from 'zustand/vanilla';
import { DEFAULT_SETTINGS } from '../../core/bridge/defaultSettings.ts';
import type { Settings } from '../../core/bridge/shellMessages.ts';

export interface SettingsState {
  readonly settings: Settings;
  /** What the system asks for, where the theme follows it. */
  readonly systemDark: boolean;
}

export type SettingsStore = StoreApi<SettingsState>;

export function createSettingsStore(): SettingsStore {
  return createStore<SettingsState>()(() => ({ settings: DEFAULT_SETTINGS, systemDark: false }));
}

export function themeOf({ settings, systemDark }: SettingsState): 'light' | 'dark' {
  if (settings.theme !== 'system') return settings.theme;
  return systemDark ? 'dark' : 'light';
}
