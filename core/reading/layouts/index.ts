// Every form a recording may have. A new one is a file in this folder and a line here.

import type { Layout } from './layout.ts';
import { longText } from './longText.ts';
import { mdf4 } from './mdf4.ts';
import { pairedText } from './pairedText.ts';
import { socketcan } from './socketcan.ts';
import { wideText } from './wideText.ts';

export const LAYOUTS: readonly Layout[] = unique([wideText, longText, pairedText, socketcan, mdf4]);

function unique(layouts: readonly Layout[]): readonly Layout[] {
  const ids = new Set<string>();
  for (const { id } of layouts) {
    if (ids.has(id)) throw new Error(`Two layouts are called ${id}; give one of them another id.`);
    ids.add(id);
  }
  return layouts;
}
