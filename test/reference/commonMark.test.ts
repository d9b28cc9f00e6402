// CommonMark 0.31.2 (spec of January 2024) by its reference parser, the npm package commonmark 0.31.2, with raw HTML
// allowed: whatever a stranger typed, a sheet and a list of notes hold no node that the template did not make (T-INJ-3).

import { Parser } from 'commonmark';
import { describe, expect, test } from 'vitest';
import { buildSheet } from '../../core/evidence/buildSheet.ts';
import { markdown } from '../../core/evidence/formats/markdown.ts';
import { notesFile } from '../../core/evidence/notes/notesFile.ts';
import { hostileSheet } from '../support/hostileSheet.ts';
import { HOSTILE_TEXTS } from '../support/hostileTexts.ts';

/** How many nodes of each kind a document has; runs of text are left out, for they may be cut anywhere. */
function nodesOf(text: string): Record<string, number> {
  const counts: Record<string, number> = {};
  const walker = new Parser().parse(text).walker();
  for (let step = walker.next(); step !== null; step = walker.next()) {
    const { type } = step.node;
    if (step.entering && type !== 'text' && type !== 'softbreak') counts[type] = (counts[type] ?? 0) + 1;
  }
  return counts;
}

const sheetNodes = (text: string) => nodesOf(markdown.write(buildSheet(hostileSheet(text))));
const noteNodes = (text: string) => nodesOf(notesFile(hostileSheet(text).record, 'md', '.'));

describe('CommonMark', () => {
  test('the parser sees what is not escaped', () => {
    expect(nodesOf('[x](javascript:alert(1))\n\n<b>raw</b> ![x](y)')).toMatchObject({
      link: 1,
      html_inline: 2,
      image: 1,
    });
  });

  test.each(HOSTILE_TEXTS.map((text) => [text]))('%j makes no node of its own', (text) => {
    expect(sheetNodes(text)).toEqual(sheetNodes('harmless'));
    expect(noteNodes(text)).toEqual(noteNodes('harmless'));
  });

  test('the template itself makes no link, no picture and no HTML', () => {
    for (const nodes of [sheetNodes('harmless'), noteNodes('harmless')]) {
      for (const kind of ['link', 'image', 'html_inline', 'html_block']) expect(nodes).not.toHaveProperty(kind);
    }
  });
});
