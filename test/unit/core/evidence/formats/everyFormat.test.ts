// The contract of every way to write a sheet, walked over the registry.

import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { buildSheet } from '../../../../../core/evidence/buildSheet.ts';
import { csv } from '../../../../../core/evidence/formats/csv.ts';
import { html } from '../../../../../core/evidence/formats/html.ts';
import { SHEET_FORMATS, sheetFormat } from '../../../../../core/evidence/formats/index.ts';
import { json } from '../../../../../core/evidence/formats/json.ts';
import { markdown } from '../../../../../core/evidence/formats/markdown.ts';
import { hostileSheet } from '../../../../support/hostileSheet.ts';
import { HOSTILE_TEXTS } from '../../../../support/hostileTexts.ts';
import { sheetInput } from '../../../../support/sheetInput.ts';

const harmless = buildSheet(hostileSheet('harmless'));
const hostile = HOSTILE_TEXTS.map((text) => [text, buildSheet(hostileSheet(text))] as const);

/** Tags with the names of their attributes and of no values: the skeleton that a browser would build from. */
function skeleton(markup: string): string[] {
  const tags = markup.match(/<[^>]*>/g) ?? [];
  return tags.map((tag) => tag.replace(/"[^"]*"/g, '""'));
}

describe.each(SHEET_FORMATS.map((format) => [format.id, format] as const))('%s', (id, format) => {
  test('is found by its file ending, in any case', () => {
    expect(sheetFormat(id.toUpperCase())).toBe(format);
    expect(sheetFormat('exe')).toBeNull();
  });

  test('gives the same bytes for the same sheet', () => {
    expect(format.write(buildSheet(sheetInput()))).toBe(format.write(buildSheet(sheetInput())));
  });

  test('never throws, whatever the names hold', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 30 }), (text) => {
        expect(format.write(buildSheet(hostileSheet(text))).length).toBeGreaterThan(1000);
      }),
    );
  });

  test('holds what the sheet holds: finding, condition, measure, code, hash, reading, note, cautions', () => {
    const text = format.write(buildSheet(sheetInput())).replaceAll('\\', '');
    for (const part of [
      'Does not store oxygen',
      '✗ not met',
      '– not recorded',
      'Coolant 88 to 91 °C.',
      'Switching, rear over front',
      'catalyst system efficiency below threshold, bank 1',
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
      'The outlet is 64 K cooler than the inlet.',
      'Rear sensor follows the front',
      'Carbon monoxide',
      'not been calibrated on road cars',
    ]) {
      expect(text).toContain(part);
    }
    expect(text).not.toMatch(/undefined|NaN|\[object/);
  });
});

describe('T-INJ-2: the HTML sheet', () => {
  test.each(hostile)('%j changes no element and no attribute', (_, sheet) => {
    expect(skeleton(html.write(sheet))).toEqual(skeleton(html.write(harmless)));
  });

  test('has its own policy before anything it could forbid, and neither script nor address from outside', () => {
    const page = html.write(buildSheet(sheetInput()));
    const head = page.slice(0, page.indexOf('</head>'));
    expect(head.indexOf('Content-Security-Policy')).toBeLessThan(head.indexOf('<style>'));
    expect(head).toContain(
      'content="default-src &#39;none&#39;; style-src &#39;unsafe-inline&#39;; img-src data:; base-uri &#39;none&#39;; form-action &#39;none&#39;"',
    );
    expect(page).not.toMatch(/<script|\son[a-z]+=|https?:|url\(/i);
  });

  test('G4: headings in order, table heads with their scope, captions, alternatives, language', () => {
    const page = html.write(buildSheet(sheetInput()));
    expect(page).toContain('<html lang="en">');
    const levels = [...page.matchAll(/<h(\d)/g)].map((match) => Number(match[1]));
    expect(levels[0]).toBe(1);
    for (const [i, level] of levels.entries()) expect(level - (levels[i - 1] ?? 0)).toBeLessThanOrEqual(1);
    expect(page.match(/<table>/g)?.length).toBe(page.match(/<caption>/g)?.length);
    expect(page.match(/<th>/g)).toBeNull();
    for (const image of page.match(/<img[^>]*>/g) ?? ['']) expect(image).toMatch(/ alt="[^"]+"/);
  });

  test('prints on the paper that was chosen', () => {
    const { settings } = sheetInput();
    const letter = buildSheet({ ...sheetInput(), settings: { ...settings, paper: 'Letter' } });
    expect(html.write(buildSheet(sheetInput()))).toContain('size: 210mm 297mm');
    expect(html.write(letter)).toContain('size: 8.5in 11in');
  });
});

describe('T-INJ-1: the CSV sheet', () => {
  const starts = /^[\s\p{Cc}]*[=+\-@＝＋－＠]|^\p{Cc}/u;
  test.each(hostile)('%j: no text cell starts a formula, and no number is changed', (_, sheet) => {
    const rows = read(csv.write(sheet));
    const plain = read(csv.write(harmless));
    expect(rows).toHaveLength(plain.length);
    for (const [i, row] of rows.entries()) {
      expect(row).toHaveLength(7);
      expect(row[4]).toBe(plain[i]?.[4]);
      for (const cell of row.filter((_, column) => column !== 4)) expect(cell).not.toMatch(starts);
    }
  });

  test('numbers stay bare: a negative one too, with the decimal sign that the file says it uses', () => {
    const { settings } = sheetInput();
    const comma = buildSheet({ ...sheetInput(), settings: { ...settings, decimalSign: ',' } });
    expect(csv.write(buildSheet(sheetInput()))).toContain(',Weight,-0.2,1,');
    expect(csv.write(comma)).toContain(';Weight;-0,2;1;');
    expect(csv.write(comma)).toContain(';decimal sign of this file;;;comma');
  });
});

function read(text: string): string[][] {
  return Papa.parse<string[]>(text.replace('\ufeff', ''), { skipEmptyLines: true }).data;
}

describe('the JSON sheet', () => {
  test.each(hostile)('%j comes back as it was', (text, sheet) => {
    const back: { title: string } = JSON.parse(json.write(sheet));
    expect(back.title).toBe(`Evidence sheet: ${text}`);
  });

  test('tables are rows of named values; numbers have their unit, what is missing says why', () => {
    const back: unknown = JSON.parse(json.write(buildSheet(sheetInput())));
    expect(JSON.stringify(back)).toContain(
      '{"measure":{"value":"Switching, rear over front"},"unit":{"value":"1"},"value":{"value":0.8,"unit":"1"}',
    );
    expect(JSON.stringify(back)).toContain('"value":{"value":null,"why":"cannot tell"}');
  });
});

describe('T-INJ-3: the Markdown sheet', () => {
  test.each(hostile)('%j makes no line, bar, link or tag that the harmless text does not make', (_, sheet) => {
    const bare = (text: string) => text.replace(/\\./gs, '');
    const text = bare(markdown.write(sheet));
    const plain = bare(markdown.write(harmless));
    expect(text.split('\n')).toHaveLength(plain.split('\n').length);
    for (const mark of ['|', '[', ']', '<', '`', '!['] as const) {
      expect(text.split(mark).length, mark).toBe(plain.split(mark).length);
    }
    expect(text.match(/^#+ /gm)).toEqual(plain.match(/^#+ /gm));
    expect(text).not.toMatch(/https?:\/\/|www\.e|\w@\w/);
  });
});

describe('T-INJ-6: what is not seen is written out', () => {
  test.each([['html'], ['md']] as const)('%s', (id) => {
    const text = sheetFormat(id)?.write(buildSheet(hostileSheet('a\u202eb\u200bc\u0007d'))) ?? '';
    expect(text).toContain('a‹U+202E›b‹U+200B›c‹U+0007›d');
    expect(/[\u202a-\u202e\u2066-\u2069\u200b-\u200f]/.test(text)).toBe(false);
  });
});
