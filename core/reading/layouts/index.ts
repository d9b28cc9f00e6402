// Every form a recording may have. A new one is a file in this folder and a line here.

import { registry } from '../../registry.ts';
import type { Layout } from './layout.ts';
import { longText } from './longText.ts';
import { mdf4 } from './mdf4.ts';
import { pairedText } from './pairedText.ts';
import { socketcan } from './socketcan.ts';
import { wideText } from './wideText.ts';

export const LAYOUTS: readonly Layout[] = registry('layouts', ({ id }) => id, [
  wideText,
  longText,
  pairedText,
  socketcan,
  mdf4,
]);
