/** A clip in which a tape lies: one frame of it taken as released, the tape chosen, at the step where it is marked. */
import type { Page } from '@playwright/test';
import type { TruthView } from './main-job-truth.ts';
import { step } from './shell-start.ts';

export async function takeWithTape(page: Page, { frameIndex }: TruthView): Promise<void> {
  await page.getByRole('slider', { name: 'Position in the clip' }).fill(`${frameIndex ?? 0}`);
  await page.getByRole('button', { name: 'Take as released' }).click();
  await step(page, 2).click();
  await page.getByRole('checkbox', { name: /Tape along the rod/ }).check();
  await page.getByRole('checkbox', { name: /tape lay in the same place/ }).check();
  await step(page, 3).click();
}
