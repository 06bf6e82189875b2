/** The rules of access, tried on the page as it stands. */
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';

/** In the page alone: it has no frames of another origin, for which a blank page would be opened and given the rules anew each time. */
export const axe = (page: Page) => new AxeBuilder({ page }).setLegacyMode();
