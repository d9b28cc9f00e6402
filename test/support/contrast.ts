// Contrast of two colours by the formula of WCAG 2.2 (relative luminance, contrast ratio), and what lies under a
// colour that lets the ground through. Checked against published ratios in test/reference/contrast.test.ts.

/** Ratio of two opaque colours, '#rrggbb', 1 to 21. */
export function contrast(one: string, other: string): number {
  const [low, high] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return ((high ?? 0) + 0.05) / ((low ?? 0) + 0.05);
}

/** '#rrggbbaa' laid over an opaque ground, as an opaque colour; an opaque colour covers its ground. */
export function laidOver(colour: string, ground: string): string {
  const share = colour.length === 9 ? Number.parseInt(colour.slice(7), 16) / 255 : 1;
  const parts = [1, 3, 5].map((at) => Math.round(share * byteAt(colour, at) + (1 - share) * byteAt(ground, at)));
  return `#${parts.map((part) => part.toString(16).padStart(2, '0')).join('')}`;
}

function luminance(colour: string): number {
  const linear = (at: number): number => {
    const share = byteAt(colour, at) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * linear(1) + 0.7152 * linear(3) + 0.0722 * linear(5);
}

function byteAt(colour: string, at: number): number {
  return Number.parseInt(colour.slice(at, at + 2), 16);
}
