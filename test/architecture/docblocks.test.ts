// A docblock is a data sheet. Whoever reads only the head of a function must know what it computes, in which units, and
// what bad input gets. This looks at whether there is one; what it says is for the reader to judge.

import { describe, expect, test } from 'vitest';
import { MEMBERS } from './registeredMembers.ts';
import { readText, sourceFiles } from './sourceTree.ts';
import { isNode, lineOf, nodesOf } from './syntax.ts';

const CORE = sourceFiles().filter((path) => /^core\/.*\.ts$/.test(path) && !path.endsWith('.d.ts'));

/** Exported functions without a docblock right before them, as "path:line name". */
function withoutDocblock(path: string, text: string): string[] {
  return nodesOf(path, text).flatMap((node) => {
    if (node.type !== 'ExportNamedDeclaration' || !isNode(node.declaration)) return [];
    const { declaration } = node;
    if (declaration.type !== 'FunctionDeclaration' || !isNode(declaration.id)) return [];
    if (text.slice(0, node.start).trimEnd().endsWith('*/')) return [];
    return [`${path}:${lineOf(text, node.start)} ${String(declaration.id.name)}`];
  });
}

describe('docblocks', () => {
  test('every exported function of core has one', () => {
    expect(CORE.flatMap((path) => withoutDocblock(path, readText(path)))).toEqual([]);
  });

  test('a missing one is found', () => {
    const text = ['/** Adds. */', 'export function sum() {}', '// Not a docblock.', 'export function other() {}'].join(
      '\n',
    );
    expect(withoutDocblock('core/x.ts', text)).toEqual(['core/x.ts:4 other']);
  });
});

/** As long as a sentence that says something. */
const SENTENCE = 30;

describe('registered members', () => {
  test('there are some', () => {
    expect(MEMBERS.length).toBeGreaterThan(20);
  });

  test.each(MEMBERS.map((member) => [`${member.folder} ${member.id}`, member] as const))(
    '%s explains itself: by a help text for people, or by a comment for readers',
    (_name, { file, name, value }) => {
      if ('help' in value) expect(String(value.help).trim().length).toBeGreaterThan(SENTENCE);
      else expect(hasHead(readText(file), name), `${file} says in a comment what ${name} is`).toBe(true);
    },
  );
});

/** Whether a comment stands right before the exported constant, or at the head of its file. */
function hasHead(text: string, name: string): boolean {
  const before = text.slice(0, text.search(new RegExp(`export const ${name}\\b`))).trimEnd();
  return before.endsWith('*/') || /^(\/\/|\/\*\*)/.test(text);
}
