// npm run --silent score -- …: the headless command. Builds it if a source has changed, then becomes it.

import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from './build.mjs';
import { personsFolder } from './launch.mjs';
import { DIST } from './places.mjs';
import { prepare } from './prepare.mjs';
import { runCommand } from './problem.mjs';

await runCommand(async () => {
  await prepare();
  await build({ only: ['score'] });
  process.chdir(personsFolder()); // so that the names of captures mean what the person typed
  await import(pathToFileURL(join(DIST, 'main', 'score.mjs')).href);
  return typeof process.exitCode === 'number' ? process.exitCode : 0;
});
