import { describe, expect, it } from 'vitest';
import { CONTENT_POLICY, SHEET_POLICY, safeHeaders } from '../../../../main/safety/contentPolicy.ts';

/** A policy as a browser reads it: CSP level 3, section 2.2. */
function read(policy: string): Record<string, string[]> {
  const directives = policy.split(';').map((directive) => directive.trim().split(/\s+/));
  return Object.fromEntries(directives.map(([name = '', ...sources]) => [name, sources]));
}

describe('T-EL-7: the content policy', () => {
  it('of a page is exactly this', () => {
    expect(read(CONTENT_POLICY)).toEqual({
      'default-src': ["'none'"],
      'script-src': ["'self'"],
      'style-src': ["'self'"],
      'font-src': ["'self'"],
      'img-src': ["'self'", 'data:', 'blob:'],
      'worker-src': ["'none'"],
      'base-uri': ["'none'"],
      'form-action': ["'none'"],
      'frame-ancestors': ["'none'"],
    });
  });

  it('of a printed sheet lets no script run and nothing be fetched', () => {
    const policy = read(SHEET_POLICY);
    expect(policy['default-src']).toEqual(["'none'"]);
    expect(policy['script-src']).toBeUndefined();
    expect(Object.values(policy).flat()).not.toContain('https:');
  });

  it('goes out with every answer', () => {
    expect(safeHeaders('text/html', CONTENT_POLICY)).toMatchObject({
      'content-security-policy': CONTENT_POLICY,
      'x-content-type-options': 'nosniff',
    });
  });
});
