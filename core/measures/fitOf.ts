import { fitConverter } from '../model/fitConverter.ts';
import { remember } from '../signal/remember.ts';
import type { WindowData } from './measure.ts';

/** The storage model fitted to a window; computed once, for the measures and for the finding. */
export const fitOf = remember((data: WindowData) => fitConverter(data));
