import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';

/**
 * What of the page as it stands, or of a part of it, breaks a rule of accessibility: one line a rule with the first thing that
 * breaks it.
 */
export const violations = async (app: Page, part = ':root'): Promise<string[]> => {
  // The page has no frames: what looks into those would only open a second page, and describe every rule that is kept.
  const audit = new AxeBuilder({ page: app })
    .include(part)
    .options({ resultTypes: ['violations'] })
    .setLegacyMode(true);
  const { violations: found } = await audit.analyze();
  return found.map(({ id, nodes }) => `${id}: ${nodes[0].html.slice(0, 120)}`);
};
