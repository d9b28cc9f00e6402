// A bad habit can only die out. Each count may not grow; when it has shrunk, the number here is lowered with it, so that
// what was won stays won. The aim of every one is nought.

import { describe, expect, test } from 'vitest';
import { readText, sourceFiles } from './sourceTree.ts';
import { isNode, lineOf, nodesOf } from './syntax.ts';

const FILES = sourceFiles().filter((path) => /\.tsx?$/.test(path) && !path.endsWith('.d.ts'));

type Look = (path: string, text: string) => string[];

const atNodes =
  (isMeant: (node: ReturnType<typeof nodesOf>[number]) => boolean): Look =>
  (path, text) =>
    nodesOf(path, text)
      .filter(isMeant)
      .map((node) => `${path}:${lineOf(text, node.start)}`);

const atLines =
  (pattern: RegExp): Look =>
  (path, text) =>
    text.split('\n').flatMap((line, index) => (pattern.test(line) ? [`${path}:${index + 1}`] : []));

const isConst = (annotation: unknown): boolean =>
  isNode(annotation) && isNode(annotation.typeName) && annotation.typeName.name === 'const';

const assertions = atNodes((node) => node.type === 'TSAsExpression' && !isConst(node.typeAnnotation));

/** Lines a file may have before it counts as long, by folder; the linter's ceiling is higher. */
const LONG: readonly (readonly [RegExp, number])[] = [
  [/^core\//, 200],
  [/^(main|renderer)\//, 250],
  [/^test\//, 350],
];

const longFiles: Look = (path, text) => {
  const allowed = LONG.find(([folder]) => folder.test(path))?.[1] ?? Number.POSITIVE_INFINITY;
  return text.split('\n').length > allowed ? [path] : [];
};

const RATCHETS: readonly { readonly habit: string; readonly look: Look; readonly count: number }[] = [
  {
    habit: 'type assertions (as …), which tell the compiler what it cannot see',
    look: (path, text) => (path.startsWith('test/') ? [] : assertions(path, text)),
    count: 6,
  },
  {
    habit: 'the same in tests, whose stand-ins need some',
    look: (path, text) => (path.startsWith('test/') ? assertions(path, text) : []),
    count: 10,
  },
  {
    habit: 'assertions that something is there (…!)',
    look: atNodes((node) => node.type === 'TSNonNullExpression'),
    count: 0,
  },
  { habit: 'any', look: atNodes((node) => node.type === 'TSAnyKeyword'), count: 0 },
  {
    habit: 'checks switched off',
    look: atLines(
      new RegExp(
        `//\\s*(${['biome', 'ignore'].join('-')}|${['@ts', '(ignore|expect-error|nocheck)'].join('-')}|oxlint-disable)`,
      ),
    ),
    count: 0,
  },
  { habit: 'long files', look: longFiles, count: 2 },
];

describe('only fewer', () => {
  test.each(RATCHETS)('$habit', ({ look, count }) => {
    const found = FILES.flatMap((path) => look(path, readText(path)));
    const words =
      found.length > count ? 'Do without the new one' : 'Lower the count in test/architecture/ratchet.test.ts';
    expect(found.length, `${words}. Found ${found.length}: ${found.join(', ')}`).toBe(count);
  });

  test.each([
    ['const a = b as C; const d = e as const;', 'type assertions'],
    ['const a = b!;', 'assertions that something'],
    ['const a: any = 1;', 'any'],
    [`${['// biome', 'ignore'].join('-')} lint/x: y\nconst a = 1;`, 'checks switched off'],
    ['const a = 1;\n'.repeat(260), 'long files'],
  ])('a planted one is counted once: %#', (text, habit) => {
    const ratchet = RATCHETS.find((one) => one.habit.startsWith(habit));
    expect(ratchet?.look('core/planted.ts', text)).toHaveLength(1);
  });
});
