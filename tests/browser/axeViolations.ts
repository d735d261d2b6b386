import { AxeBuilder } from '@axe-core/playwright';
import axe from 'axe-core';
import type { Page } from 'playwright-core';

const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What axe finds on the page against WCAG 2.2 AA and good practice: the rule, and the elements that break it. */
export async function axeViolations(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page, axeSource: axe.source })
    // Elements that keep the rules need not be listed: half of axe's time on a page of charts.
    .options({ resultTypes: ['violations'] })
    .withTags(rules)
    .analyze();
  return violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html.slice(0, 200)).join(' ')}`);
}
