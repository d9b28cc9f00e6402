import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright';

/** Levels A and AA of WCAG 2.0, 2.1 and 2.2. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/**
 * What axe finds on the page, one line a fault; in the dialog alone where one is open, since all else is out of reach
 * then. `legacy` for runtimes that open no second page for it.
 */
export async function axeFaults(page: Page, legacy = false): Promise<string[]> {
  const axe = new AxeBuilder({ page }).withTags(TAGS).setLegacyMode(legacy);
  if ((await page.locator('dialog[open]').count()) > 0) axe.include('dialog[open]');
  const { violations } = await axe.analyze();
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`));
}
