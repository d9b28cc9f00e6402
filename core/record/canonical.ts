import canonicalize from 'canonicalize';

/**
 * The value as canonical JSON: RFC 8785 (June 2020), keys sorted by UTF-16 units, numbers as ECMAScript prints them, no
 * blanks. Equal values give equal text, whatever the order of their keys, so a hash over it (made by the caller: core
 * has none) tells whether two records are the same. Throws for what JSON cannot hold: NaN, infinity, lone surrogates,
 * undefined; a record that passed its schema and its door holds none of these.
 */
export function canonicalJson(value: unknown): string {
  const text = canonicalize(value);
  if (text === undefined) throw new TypeError('this value has no JSON form');
  return text;
}
