// Takes the place of Electron's own starter, which a packed runtime lacks: starts the program whose folder is the first
// argument that is not a switch. Only part of the fallback runtime for development and tests; never shipped.

const { readFileSync } = require('node:fs');
const { join, resolve } = require('node:path');
const { app } = require('electron');

const given = process.argv.slice(1).find((argument) => !argument.startsWith('-'));

if (given === undefined) {
  process.stderr.write('Name the folder of the program to start.\n');
  app.exit(2);
} else {
  const folder = resolve(given);
  const about = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  app.setAppPath(folder);
  app.setName(about.productName ?? about.name);
  app.setVersion(about.version);
  require(join(folder, about.main));
}
