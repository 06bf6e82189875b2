import { paperOfLocale } from '../report/paper-of-locale.ts';
import { choices, media } from '../stores.ts';
import type { Compose } from './make-package.ts';

/** The report and the annotated stills that go into the package; fetched when one is made. */
export const composePackage: Compose = async (record, madeAt, signal) => {
  const { makeReport } = await import('../report/make-report.browser.ts');
  const sheet = { unit: choices.getState().lengthUnit, paper: paperOfLocale(navigator.language), madeAt };
  const { html, stills } = await makeReport(record, sheet, {
    fileOf: (sha256) => media.getState().files[sha256] ?? null,
    signal,
    onProgress: () => undefined,
  });
  return { report: html, stills };
};
