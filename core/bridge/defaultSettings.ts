import type { Settings } from './shellMessages.ts';

/** Settings of a first start. */
export const DEFAULT_SETTINGS: Settings = {
  theme: 'system',
  temperatureUnit: 'C',
  speedUnit: 'km/h',
  wheel: 'zoom',
  singleKeys: true,
  reader: '',
  licence: '',
  paper: 'A4',
  showGuides: true,
};
