/** The report of a record as one file, and its parts as the page shows them. Pure: pictures, results and the moment come in. */
import { type ReportFonts, reportBody, reportDocument } from '../../evidence/report-html.ts';
import { pageRules } from '../../evidence/report-styles.ts';
import type { Paper } from '../../references/paper.ts';
import { type ReportInput, reportModel } from './compose-report.ts';
import { type ReportPictures, reportDrawings } from './report-drawings.ts';

export function reportHtml(
  input: ReportInput,
  pictures: ReportPictures,
  sheet: { readonly paper: Paper; readonly fonts: ReportFonts },
): string {
  return reportDocument(reportModel(input), reportDrawings(input, pictures), sheet);
}

/** For showing and printing it inside the page, which has the typeface already. */
export function reportOnPage(
  input: ReportInput,
  pictures: ReportPictures,
  paper: Paper,
): { readonly body: string; readonly pageRules: string } {
  const model = reportModel(input);
  return {
    body: reportBody(model, reportDrawings(input, pictures)).text,
    pageRules: pageRules(model.running, paper),
  };
}
