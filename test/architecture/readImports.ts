// Every import of a source file, in all the forms the language has: import, import type, export … from, import(),
// typeof import(), require().

import { posix } from 'node:path';
import { isNode, lineOf, nodesOf, type SyntaxNode } from './syntax.ts';

export interface FoundImport {
  readonly line: number;
  /** As written. */
  readonly named: string;
  /** Path from the root for a file of the repository; null for a package or a part of Node. */
  readonly file: string | null;
  /** True where nothing of it is left when the program runs. */
  readonly typeOnly: boolean;
}

export function importsOf(path: string, text: string): FoundImport[] {
  const found: FoundImport[] = [];
  for (const node of nodesOf(path, text)) {
    const named = namedBy(node);
    if (named === null) continue;
    const file = named.startsWith('.') ? posix.normalize(posix.join(posix.dirname(path), named)) : null;
    found.push({ line: lineOf(text, node.start), named, file, typeOnly: isTypeOnly(node) });
  }
  return found;
}

function namedBy(node: SyntaxNode): string | null {
  switch (node.type) {
    case 'ImportDeclaration':
    case 'ExportAllDeclaration':
    case 'ExportNamedDeclaration':
    case 'ImportExpression':
    case 'TSImportType':
      return literal(node.source);
    case 'TSExternalModuleReference':
      return literal(node.expression);
    case 'CallExpression': {
      const callee = node.callee;
      const [first] = Array.isArray(node.arguments) ? node.arguments : [];
      return isNode(callee) && callee.name === 'require' ? literal(first) : null;
    }
    default:
      return null;
  }
}

function literal(value: unknown): string | null {
  return isNode(value) && value.type === 'Literal' && typeof value.value === 'string' ? value.value : null;
}

function isTypeOnly(node: SyntaxNode): boolean {
  if (node.type === 'TSImportType') return true;
  if (node.importKind === 'type' || node.exportKind === 'type') return true;
  const specifiers = node.specifiers;
  if (!Array.isArray(specifiers) || specifiers.length === 0) return false;
  return specifiers.every((one) => isNode(one) && (one.importKind === 'type' || one.exportKind === 'type'));
}
