// The one place where text becomes markup, for HTML and SVG alike. Texts go in as they are and come out escaped; names of
// elements and attributes come from the program alone. Nothing else in core puts a raw value into markup (T-INJ-2, 4).

import { showControls } from '../words/showControls.ts';

/** Text that is markup already. The class stays in this file, so nothing else can make one. */
class MarkupText {
  private readonly source: string;
  constructor(source: string) {
    this.source = source;
  }
  toString(): string {
    return this.source;
  }
}
export type Markup = MarkupText;

export type Attributes = Readonly<Record<string, string | number | null>>;

/** Elements that HTML closes by itself. SVG knows none of these names. */
const VOID = new Set(['meta', 'br', 'img', 'hr']);
const NAME = /^[a-zA-Z][a-zA-Z0-9:-]*$/;

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text, with what is not seen made visible and what means something to a parser escaped. */
export function escapeText(text: string): Markup {
  return new MarkupText(showControls(text).replace(/[&<>"']/g, (character) => ENTITIES[character] ?? ''));
}

/**
 * One element. Text becomes a child through escapeText; an attribute that is null is left out, the others are escaped
 * and quoted.
 */
export function element(name: string, attributes: Attributes, ...children: readonly (Markup | Markup[])[]): Markup {
  const inside = children.flat().join('');
  const head = `<${mustBeName(name)}${attributesText(attributes)}`;
  if (VOID.has(name)) return new MarkupText(`${head}>`);
  return new MarkupText(`${head}>${inside}</${name}>`);
}

/** Several pieces as one. */
export function joined(...pieces: readonly (Markup | Markup[])[]): Markup {
  return new MarkupText(pieces.flat().join(''));
}

/** A style sheet of the program's own. It may not end its own element. */
export function styleSheet(css: string): Markup {
  if (css.includes('<')) throw new RangeError('a style sheet without tags');
  return new MarkupText(`<style>${css}</style>`);
}

/** A document from its root element, with whatever stands before it. */
export function documentOf(before: '<!doctype html>' | '<?xml version="1.0" encoding="UTF-8"?>', root: Markup): string {
  return `${before}\n${root}\n`;
}

function attributesText(attributes: Attributes): string {
  return Object.entries(attributes)
    .filter(([, value]) => value !== null)
    .map(([name, value]) => ` ${mustBeName(name)}="${escapeText(String(value))}"`)
    .join('');
}

function mustBeName(name: string): string {
  if (!NAME.test(name)) throw new RangeError('the name of an element or attribute comes from the program');
  return name;
}
