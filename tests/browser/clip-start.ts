/** A clip in which a tape lies: one frame of it taken as released, the tape chosen, at the step where it is marked. */
import { expect, type Page } from '@playwright/test';
import type { TruthView } from './main-job-truth.ts';

export async function takeWithTape(page: Page, { frameIndex }: TruthView): Promise<void> {
  await page.getByRole('slider', { name: 'Position in the clip' }).fill(`${frameIndex ?? 0}`);
  await page.getByRole('button', { name: 'Take as released' }).click();
  await page.getByRole('button', { name: /^Tape held still along the rod/ }).click();
  await expect(page.locator('.asking')).toContainText('chamber face on the released picture');
}
