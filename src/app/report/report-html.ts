/** The report of a record as one file, and its parts as the page shows them. Pure: pictures, results and the moment come in. */
import { type ReportFonts, reportBody, reportDocument } from '../../evidence/report-html.ts';
import { type Paper, pageRules } from '../../evidence/report-styles.ts';
import { type ReportInput, reportModel } from './compose-report.ts';
import { type ReportParts, reportDrawings } from './report-drawings.ts';

export function reportHtml(
  input: ReportInput,
  parts: ReportParts,
  sheet: { readonly paper: Paper; readonly fonts: ReportFonts },
): string {
  return reportDocument(reportModel(input), reportDrawings(input, parts), sheet);
}

/** For showing and printing it inside the page, which has the typeface already. */
export function reportOnPage(
  input: ReportInput,
  parts: ReportParts,
  paper: Paper,
): { readonly body: string; readonly pageRules: string } {
  const model = reportModel(input);
  return {
    body: reportBody(model, reportDrawings(input, parts)).text,
    pageRules: pageRules(model.running, paper),
  };
}
