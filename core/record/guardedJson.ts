// JSON from outside is looked over before it is parsed: one pass, no recursion, so that size, depth, doubled keys and
// names that reach into every object are refused before they can do anything (RFC 8259; OWASP ASVS 1.5.2, 1.5.3).

/** What is wrong with a JSON text, and where: a character counted from 0. */
export interface JsonFault {
  readonly kind: 'tooLarge' | 'tooDeep' | 'notJson' | 'doubledKey' | 'forbiddenKey' | 'loneSurrogate' | 'notFinite';
  readonly at: number;
  /** The key or number it is about, cut to 40 characters, or an empty text. */
  readonly found: string;
}

export interface JsonLimits {
  readonly characters: number;
  readonly depth: number;
}

export type GuardedJson =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly fault: JsonFault };

const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype']);
const LONE_SURROGATE = /\p{Surrogate}/u;

/**
 * The value of a JSON text, or what is wrong with it. Refused besides what is not JSON: texts over the limits, the same
 * key twice in one object, keys that every object inherits, numbers too large to be held, half surrogate pairs. A byte
 * order mark at the start is passed over. Never throws.
 */
export function parseGuardedJson(text: string, limits: JsonLimits): GuardedJson {
  if (text.length > limits.characters) return refused('tooLarge', limits.characters);
  const bare = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  const fault = findFault(bare, limits.depth);
  if (fault !== null) return { ok: false, fault };
  try {
    return { ok: true, value: JSON.parse(bare) };
  } catch {
    return refused('notJson', 0);
  }
}

function refused(kind: JsonFault['kind'], at: number, found = ''): { ok: false; fault: JsonFault } {
  return { ok: false, fault: { kind, at, found: found.slice(0, 40) } };
}

/** The first fault that JSON.parse would not see. Texts that are no JSON may pass: JSON.parse refuses those. */
function findFault(text: string, deepest: number): JsonFault | null {
  /** For each open bracket its keys so far, or null for a list. */
  const open: (Set<string> | null)[] = [];
  let keyNext = false;
  for (let at = 0; at < text.length; at++) {
    const character = text[at] ?? '';
    if (character === '{' || character === '[') {
      open.push(character === '{' ? new Set() : null);
      if (open.length > deepest) return refused('tooDeep', at).fault;
      keyNext = character === '{';
    } else if (character === '}' || character === ']') {
      open.pop();
      keyNext = false;
    } else if (character === ',') {
      keyNext = open.at(-1) instanceof Set;
    } else if (character === '"') {
      const end = endOfString(text, at);
      const fault = faultOfString(text, at, end, keyNext ? (open.at(-1) ?? null) : null);
      if (fault !== null) return fault;
      keyNext = false;
      at = end;
    } else if (character === '-' || (character >= '0' && character <= '9')) {
      const end = endOfNumber(text, at);
      const number = text.slice(at, end);
      if (Math.abs(Number(number)) === Number.POSITIVE_INFINITY) return refused('notFinite', at, number).fault;
      at = end - 1;
    }
  }
  return null;
}

/** Place of the closing quote, or of the last character where there is none. */
function endOfString(text: string, start: number): number {
  for (let at = start + 1; at < text.length; at++) {
    if (text[at] === '\\') at++;
    else if (text[at] === '"') return at;
  }
  return text.length - 1;
}

function endOfNumber(text: string, start: number): number {
  let at = start;
  while (at < text.length && '+-.eE0123456789'.includes(text[at] ?? ' ')) at++;
  return at;
}

function faultOfString(text: string, start: number, end: number, keys: Set<string> | null): JsonFault | null {
  const word = decoded(text.slice(start, end + 1));
  if (word === null) return refused('notJson', start).fault;
  if (LONE_SURROGATE.test(word)) return refused('loneSurrogate', start).fault;
  if (keys === null) return null;
  if (FORBIDDEN.has(word)) return refused('forbiddenKey', start, word).fault;
  if (keys.has(word)) return refused('doubledKey', start, word).fault;
  keys.add(word);
  return null;
}

function decoded(quoted: string): string | null {
  if (!quoted.includes('\\')) return quoted.slice(1, -1);
  try {
    return String(JSON.parse(quoted));
  } catch {
    return null;
  }
}
