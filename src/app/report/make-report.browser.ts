/** The report of a record with its annotated stills, for handing over. Rejects with the signal's reason when aborted. */
import type { LengthUnit } from '../../basics/length-text.ts';
import type { InspectionRecord } from '../../record/record.ts';
import type { Paper } from '../../references/paper.ts';
import { ENGINE_VERSION } from './engine-version.ts';
import { type GatherOptions, gatherReport } from './gather-report.browser.ts';
import { reportFonts } from './report-fonts.browser.ts';
import { reportHtml } from './report-html.ts';
import { annotatedStills, type Still } from './stills.browser.ts';

export type MadeReport = { readonly html: string; readonly stills: readonly Still[] };

export async function makeReport(
  record: InspectionRecord,
  sheet: {
    readonly unit: LengthUnit;
    readonly paper: Paper;
    readonly madeAt: string;
    readonly signedBy: string | null;
  },
  options: GatherOptions,
): Promise<MadeReport> {
  const { signal } = options;
  const { pictures, ...measured } = await gatherReport(record, options);
  const fonts = await reportFonts();
  const { unit, paper, madeAt, signedBy } = sheet;
  const input = { record, ...measured, unit, engine: ENGINE_VERSION, madeAt, signedBy };
  return {
    html: reportHtml(input, pictures, { paper, fonts }),
    stills: await annotatedStills(input, pictures, fonts, signal),
  };
}
