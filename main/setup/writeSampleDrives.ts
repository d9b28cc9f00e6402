// npm run drives: writes the invented sample drives into assets/drives, from the simulation in core/simulation.

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DRIVE_TEXTS } from '../../core/simulation/sampleDrives/generate.ts';

let total = 0;
for (const [file, text] of DRIVE_TEXTS) {
  const bytes = Buffer.from(text(), 'utf8');
  writeFileSync(join('assets', 'drives', file), bytes);
  total += bytes.length;
  process.stdout.write(`assets/drives/${file}: ${bytes.length} bytes\n`);
}
process.stdout.write(`${total} bytes in all\n`);
