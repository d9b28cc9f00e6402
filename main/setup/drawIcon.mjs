// node main/setup/drawIcon.mjs: draws the icon files in assets/ from the two SVG sources there, with an installed Chromium.
// Run by hand after a source has changed; what it writes is kept in the repository. The sizes up to 48 pixels come from a
// simpler drawing. Both containers hold PNG pictures: .ico since Windows Vista, .icns since Mac OS X 10.7.

import { existsSync } from 'node:fs';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { inRoot } from './places.mjs';
import { runCommand, SetupProblem } from './problem.mjs';

const SMALL_UP_TO = 48;
const SIZES = [16, 24, 32, 48, 64, 128, 256, 512, 1024];
const FOR_LINUX = [16, 24, 32, 48, 64, 128, 256, 512];
const FOR_WINDOWS = [16, 24, 32, 48, 64, 128, 256];

/** Types of the entries of an .icns file and their sizes; ic11 to ic14 are the same for dense screens. */
const FOR_MAC = /** @type {const} */ ([
  ['icp4', 16],
  ['icp5', 32],
  ['ic07', 128],
  ['ic08', 256],
  ['ic09', 512],
  ['ic10', 1024],
  ['ic11', 32],
  ['ic12', 64],
  ['ic13', 256],
  ['ic14', 512],
]);

/**
 * Draws the sources at every size.
 * @param {string} executable
 * @returns {Promise<Map<number, Buffer>>}
 */
async function drawAll(executable) {
  const { chromium } = await import('playwright');
  const browser = await chromium.launch({
    executablePath: executable,
    args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
  });
  try {
    const page = await browser.newPage();
    /** @type {Map<number, Buffer>} */
    const drawn = new Map();
    for (const size of SIZES) {
      const source = await readFile(inRoot('assets', size <= SMALL_UP_TO ? 'icon-small.svg' : 'icon.svg'), 'utf8');
      await page.setViewportSize({ width: size, height: size });
      await page.setContent(`<style>*{margin:0}svg{display:block;width:100vw;height:100vh}</style>${source}`);
      drawn.set(size, await page.screenshot({ omitBackground: true }));
    }
    return drawn;
  } finally {
    await browser.close();
  }
}

/** @param {readonly { size: number, png: Buffer }[]} pictures */
function asIco(pictures) {
  const head = Buffer.alloc(6 + 16 * pictures.length);
  head.writeUInt16LE(1, 2);
  head.writeUInt16LE(pictures.length, 4);
  let offset = head.length;
  pictures.forEach(({ size, png }, index) => {
    const at = 6 + 16 * index;
    head.writeUInt8(size % 256, at); // 256 is written as 0
    head.writeUInt8(size % 256, at + 1);
    head.writeUInt16LE(1, at + 4); // colour planes
    head.writeUInt16LE(32, at + 6); // bits a pixel
    head.writeUInt32LE(png.length, at + 8);
    head.writeUInt32LE(offset, at + 12);
    offset += png.length;
  });
  return Buffer.concat([head, ...pictures.map(({ png }) => png)]);
}

/** @param {readonly { type: string, png: Buffer }[]} pictures */
function asIcns(pictures) {
  const entries = pictures.map(({ type, png }) => {
    const head = Buffer.alloc(8);
    head.write(type, 0, 'latin1');
    head.writeUInt32BE(png.length + 8, 4);
    return Buffer.concat([head, png]);
  });
  const body = Buffer.concat(entries);
  const head = Buffer.alloc(8);
  head.write('icns', 0, 'latin1');
  head.writeUInt32BE(body.length + 8, 4);
  return Buffer.concat([head, body]);
}

await runCommand(async () => {
  const executable = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find(existsSync);
  if (executable === undefined) {
    throw new SetupProblem({
      what: 'There is no Chromium here to draw the icon with.',
      where: '/usr/bin',
      doNext: 'install the package chromium and run the command again',
    });
  }
  const drawn = await drawAll(executable);
  const at = (/** @type {number} */ size) => {
    const png = drawn.get(size);
    if (png === undefined) throw new Error(`the icon was not drawn at ${size} pixels`);
    return png;
  };
  await mkdir(inRoot('assets', 'icons'), { recursive: true });
  for (const size of FOR_LINUX) await writeFile(inRoot('assets', 'icons', `${size}x${size}.png`), at(size));
  await writeFile(inRoot('assets', 'icon.png'), at(1024));
  await writeFile(inRoot('assets', 'icon.ico'), asIco(FOR_WINDOWS.map((size) => ({ size, png: at(size) }))));
  await writeFile(inRoot('assets', 'icon.icns'), asIcns(FOR_MAC.map(([type, size]) => ({ type, png: at(size) }))));
});
