// Source files as syntax trees, from the parser that the test runner itself uses. TypeScript 7 has no programming
// interface, and text patterns see imports in comments and miss those over several lines.

import { parseAst } from 'vitest/node';

export interface SyntaxNode {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [field: string]: unknown;
}

export function isNode(value: unknown): value is SyntaxNode {
  return typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string';
}

/** Every node of a file, outermost first. */
export function nodesOf(path: string, text: string): SyntaxNode[] {
  const lang = /\.tsx$/.test(path) ? 'tsx' : /\.ts$/.test(path) ? 'ts' : 'js';
  const found: SyntaxNode[] = [];
  const waiting: unknown[] = [parseAst(text, { lang, sourceType: path.endsWith('.cjs') ? 'script' : 'module' }, path)];
  while (waiting.length > 0) {
    const value = waiting.pop();
    if (Array.isArray(value)) waiting.push(...value);
    else if (isNode(value)) {
      found.push(value);
      waiting.push(...Object.values(value).filter((child) => typeof child === 'object' && child !== null));
    }
  }
  return found.sort((a, b) => a.start - b.start);
}

export const lineOf = (text: string, start: number): number => text.slice(0, start).split('\n').length;
