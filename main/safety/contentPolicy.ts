// What a page of the program may load and run: files of the private scheme and nothing else.

const DIRECTIVES: readonly (readonly [directive: string, ...sources: string[]])[] = [
  ['default-src', "'none'"],
  ['script-src', "'self'"],
  ['style-src', "'self'"],
  ['font-src', "'self'"],
  // Pictures of the traces are drawn from blobs and data addresses that the page makes itself.
  ['img-src', "'self'", 'data:', 'blob:'],
  // Without a line of their own, workers would be allowed wherever scripts are.
  ['worker-src', "'none'"],
  ['base-uri', "'none'"],
  ['form-action', "'none'"],
  ['frame-ancestors', "'none'"],
];

/** The header's value. The page needs no connections, no frames and no workers: the core has a process of its own. */
export const CONTENT_POLICY = DIRECTIVES.map((parts) => parts.join(' ')).join('; ');

/** What a printed sheet may do: show itself. Fonts and pictures travel inside it. */
export const SHEET_POLICY =
  "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:; base-uri 'none'; form-action 'none'; " +
  "frame-ancestors 'none'";

/** Headers of every answer of the private scheme. */
export function safeHeaders(type: string, policy: string): Record<string, string> {
  return {
    'content-type': type,
    'content-security-policy': policy,
    'x-content-type-options': 'nosniff',
    'referrer-policy': 'no-referrer',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
    'cache-control': 'no-store',
  };
}
